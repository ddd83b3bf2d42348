// SPDX-License-Identifier: Apache-2.0
// day_test.mjs WORKROOM SURVEY [PICTURES]: the workroom's day in Debian's Chromium, by the names that people see and hear:
// a visit comes in, is looked for, looked at, marked, cut from rolls; rules are set, a phone is paired and refused;
// people are written down and sign in. On a screen, at a phone's width, and without script. On the way axe-core (WCAG
// 2.2 A and AA, and its own good practice) finds nothing, nothing is loaded from elsewhere, nothing runs off the page's
// side, and what is printed says what it should.
import assert from "node:assert/strict";
import { spawn, execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

import { chromium } from "playwright-core";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const [workroom, surveyFile, pictures] = process.argv.slice(2);
const sizes = [
    { name: "screen", viewport: { width: 1280, height: 900 }, javaScriptEnabled: true },
    { name: "phone", viewport: { width: 360, height: 760 }, isMobile: true, hasTouch: true, javaScriptEnabled: true },
    { name: "without-script", viewport: { width: 1280, height: 900 }, javaScriptEnabled: false },
];

/// The receiver as a process of its own.
async function serve(data) {
    const process = spawn(workroom, ["serve", "--data", data, "--port", "0"], { stdio: ["ignore", "pipe", "inherit"] });
    let text = "";
    for await (const piece of process.stdout) {
        text += piece;
        if (text.split("\n").length > 2) break;
    }
    const [address, code] = text.split("\n");
    return { process, url: address.slice(address.indexOf("http")), code: code.slice(-9) };
}

/// What a phone does first.
async function pair(receiver) {
    const paired = await fetch(`${receiver.url}/pair`, {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify({ code: receiver.code, device_name: "J. Tamm’s phone" }),
    });
    assert.equal(paired.status, 200);
    return (await paired.json()).token;
}

/// A phone sends a visit with its photos.
async function send(receiver, token, document) {
    const digest = createHash("sha256").update(document).digest("base64");
    const { id, revision } = JSON.parse(document);
    const sent = await fetch(`${receiver.url}/surveys/${encodeURIComponent(id)}/revisions/${revision}`, {
        method: "PUT",
        headers: {
            Authorization: `Bearer ${token}`,
            "Content-Type": "application/json",
            "Content-Digest": `sha-256=:${digest}:`,
        },
        body: document,
    });
    assert.equal(sent.status, 201);
    for (const digest of JSON.stringify(JSON.parse(document)).match(/[0-9a-f]{64}/g) ?? []) {
        const file = join(dirname(surveyFile), "photos", `${digest}.jpg`);
        if (!existsSync(file)) continue;
        const photo = await fetch(`${receiver.url}/photos/${digest}`, {
            method: "PUT",
            headers: { Authorization: `Bearer ${token}`, "Content-Type": "image/jpeg" },
            body: readFileSync(file),
        });
        assert.ok([200, 201].includes(photo.status));
    }
}

/// One look at the day: a page in a browser, and what is asked of every page that it comes to.
class Person {
    constructor(page, receiver, size) {
        Object.assign(this, { page, receiver, size, faults: [], seen: new Set(), strangers: [], refusals: 0 });
        page.on("request", (request) => {
            if (!request.url().startsWith(receiver.url) && !request.url().startsWith("data:")) {
                this.strangers.push(request.url());
            }
        });
        page.on("response", (reply) => {
            if (reply.status() < 400) return;
            if (this.refusals > 0) this.refusals -= 1;
            else this.faults.push(`${reply.status()}: ${reply.url()}`);
        });
        page.on("pageerror", (error) => this.faults.push(`script: ${error}`));
    }

    async look(name) {
        const { page, size } = this;
        this.seen.add(name);
        if (pictures) await page.screenshot({ path: join(pictures, `${size.name}-${name}.png`), fullPage: true });
        if (!size.javaScriptEnabled) return;
        const over = await page.evaluate(() => document.scrollingElement.scrollWidth - window.innerWidth);
        if (over > 0) this.faults.push(`${name}: ${over} px run off the side`);
        await page.evaluate(axeSource);
        const found = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
        for (const fault of found.violations) {
            const where = fault.nodes.map((node) => node.target.join(" ")).slice(0, 3);
            this.faults.push(`${name}: axe ${fault.id}: ${fault.help}: ${where.join("; ")}`);
        }
    }

    async go(path, name) {
        const reply = await this.page.goto(this.receiver.url + path);
        assert.equal(reply.status(), 200, path);
        await this.look(name);
    }

    async follow(role, name, as) {
        await this.page.getByRole(role, { name }).first().click();
        await this.page.waitForLoadState("load");
        await this.look(as);
    }

    /// The next answer is a refusal, and meant to be.
    async isRefused(what) {
        this.refusals += 1;
        await what();
        assert.equal(this.refusals, 0, `nothing was refused on ${this.page.url()}`);
    }

    async says(text) {
        const shown = (await this.page.locator("body").innerText()).replace(/\s+/g, " ");
        assert.ok(shown.includes(text), `“${text}” isn’t said on ${this.page.url()}: ${shown.slice(0, 600)}`);
    }
}

async function lookForTheVisit(person, survey) {
    await person.go("/", "list");
    await person.says(survey.title);
    await person.page.getByLabel("Look for a visit, a client or an address").fill("no such house");
    await person.follow("button", "Look", "list-nothing-found");
    await person.says("Nothing is here that has these words");
    await person.page.getByLabel("Look for a visit, a client or an address").fill(survey.title.slice(0, 5));
    await person.follow("button", "Look", "list-found");
    await person.follow("link", survey.title, "survey");
    await person.says(`revision ${survey.revision}`);
}

/// A page that lies open says what comes in, with the site's own policy in force; nothing moves until it is asked to.
async function hearOfArrivals(browser, person, token, document) {
    const { receiver, size } = person;
    const { name, ...options } = size;
    const context = await browser.newContext({ ...options, locale: "en-GB" });
    const list = await context.newPage();
    const blocked = [];
    list.on("console", (message) => message.type() === "error" && blocked.push(message.text()));
    await list.goto(receiver.url);
    await person.go("/", "list-before-an-arrival");
    const mill = { ...JSON.parse(document), id: "old-mill", title: `The old mill, seen by ${name}` };
    await send(receiver, token, JSON.stringify(mill));
    const told = list.getByRole("status").getByText(`“${mill.title}” has come in.`);
    if (size.javaScriptEnabled) {
        await told.waitFor();
        assert.equal(await list.getByRole("table").getByText(mill.title).count(), 0, "the page changed by itself");
        await person.page.getByText(`“${mill.title}” has come in.`).waitFor();
        await person.look("list-arrived");
        await list.getByRole("link", { name: "Show what is here now" }).click();
        await list.getByRole("table").getByText(mill.title).waitFor();
        assert.equal(await told.count(), 0, "it is told though it is shown");
    } else {
        assert.equal(await list.getByText("Show what is here now").isVisible(), false);
        await list.reload();
        assert.equal(await list.getByRole("table").getByText(mill.title).count(), 1);
    }
    assert.deepEqual(blocked, []);
    await context.close();
}

async function markWhatIsDone(person) {
    await person.follow("link", "Mark what was ordered, cut, made, hung", "steps");
    await person.page.getByLabel("Who marks it").fill("M. Oja");
    const first = person.page.getByRole("button", { name: /^Ordered: / }).first();
    await (await first.count() ? first : person.page.getByRole("button", { name: /: / }).first()).click();
    await person.page.waitForLoadState("load");
    await person.look("steps-marked");
    await person.says("M. Oja");
}

async function askAboutAReading(person, survey) {
    await person.go(`/surveys/${encodeURIComponent(survey.id)}`, "survey-before-asking");
    await person.follow("link", "Ask about a window or a reading", "ask");
    const about = person.page.getByLabel("About");
    await about.selectOption({ index: 1 });
    await person.page.getByLabel("What is asked").fill(`Is that so, on the ${person.size.name}? It reads much more than below.`);
    await person.page.getByLabel("Who asks").fill("M. Oja");
    await person.follow("button", "Ask", "asked");
    await person.says("no answer yet");
    await person.says(`on the ${person.size.name}`);
    await person.go(`/surveys/${encodeURIComponent(survey.id)}`, "survey-asked");
    await person.says("What was asked");
    await person.go("/?state=question", "list-asked");
    await person.says(survey.title);
}

async function cutFromRolls(person, survey) {
    await person.go(`/surveys/${encodeURIComponent(survey.id)}`, "survey-again");
    await person.follow("link", "Rolls that came, and what is cut from which", "rolls");
    const form = person.page.locator("form.rolls").first();
    const cloth = (await form.getByRole("heading").first().innerText()).split(",")[0];  // without its width
    await form.getByLabel(/^Name/).first().fill("Roll A");
    await form.getByLabel(/^Length/).first().fill("20 m");
    await form.getByRole("button", { name: "Save these rolls" }).click();
    await person.page.waitForLoadState("load");
    // Worked out beside the page, which says so until it stands there: looked at again as a person would.
    const plan = person.page.getByRole("heading", { name: cloth, exact: true, level: 2 });
    for (let looks = 0; looks < 100 && !(await plan.count()); ++looks) {
        await person.page.waitForTimeout(200);
        await person.page.reload();
    }
    await person.look("rolls-planned");
    await person.says("Roll A");
    assert.equal(await plan.count(), 1, `no plan for ${cloth}`);
}

async function setARule(person) {
    await person.go("/house-rules", "rules");
    await person.page.getByLabel("What these rules are called").fill("Rules of the quay");
    await person.page.getByRole("button", { name: /save/i }).first().click();
    await person.page.waitForLoadState("load");
    await person.look("rules-saved");
    await person.go("/house-rules", "rules-again");
    assert.equal(await person.page.getByLabel("What these rules are called").inputValue(), "Rules of the quay");
}

async function pairAndRefuse(person) {
    await person.go("/devices", "devices");
    await person.says("J. Tamm’s phone");
    await person.follow("button", "Pair a phone", "pairing");
    assert.match(await person.page.locator("main").innerText(), /[0-9A-Z]{4}-[0-9A-Z]{4}/);
    await person.go("/devices", "devices-again");
    await person.page.getByText("Revoke", { exact: true }).first().click();
    await person.follow("button", /^Revoke “/, "devices-revoked");
    assert.match(await person.page.getByRole("row", { name: /J. Tamm’s phone/ }).innerText(), /revoked \d/);
    assert.equal(await person.page.getByRole("button", { name: /^Revoke “J. Tamm/ }).count(), 0);
    await person.go("/erased", "erased");
}

const words = "lead weight, blue hem";

async function signIn(person, name, as, password = words) {
    await person.page.getByLabel("Name").fill(name);
    await person.page.getByLabel("Password", { exact: true }).fill(password);
    await person.follow("button", "Sign in", as);
}

/// From one who works alone to people who sign in, each with a role.
async function signInByName(person, survey) {
    const { page } = person;
    await person.go("/", "list-alone");
    await person.follow("link", "People", "people-nobody");
    const writeDown = async (name, button, as, password = words) => {
        await page.getByLabel("Name").fill(name);
        await page.getByLabel("Password", { exact: true }).fill(password);
        await page.getByLabel("The password again").fill(password);
        await person.follow("button", button, as);
    };
    await person.isRefused(() => writeDown("M. Oja", /^Write down the owner/, "people-too-short", "short"));
    await person.says("A password has at least 15 letters");
    await writeDown("M. Oja", /^Write down the owner/, "people-first");
    await page.getByLabel("May").selectOption("surveyor");
    await writeDown("J. Tamm", "Write down", "people-two");
    await person.follow("link", "J. Tamm", "person");
    await page.getByLabel("May").selectOption("workroom");
    await person.follow("button", "Change", "person-changed");
    await person.says("workroom: also marks steps");
    await page.getByText("Take out J. Tamm").click();
    await person.look("person-take-out");
    await person.go("/", "list-signed-in");
    await person.follow("link", "M. Oja, signed in", "me");
    await person.says("(this one)");
    await person.follow("button", "Sign out", "signed-out");
    await person.isRefused(() => page.goto(`${person.receiver.url}/surveys/${encodeURIComponent(survey.id)}/steps`));
    await person.look("sign-in-asked");
    await person.isRefused(() => signIn(person, "J. Tamm", "sign-in-wrong", "not this one"));
    await signIn(person, "J. Tamm", "steps-signed-in");
    await person.says("Marked by J. Tamm, who is signed in.");
    await page.getByRole("button", { name: /^Mark as made: / }).first().click();
    await page.waitForLoadState("load");
    await person.look("steps-by-name");
    await person.says("by J. Tamm");
    await person.go("/devices", "devices-without-revoking");
    await person.isRefused(() => page.goto(`${person.receiver.url}/people`));
    await person.look("not-yours");
    await person.says("Not yours to do");
}

/// Every link of the survey's page leads to a page or a file.
async function openAllThatIsLinked(person, survey) {
    await person.go(`/surveys/${encodeURIComponent(survey.id)}`, "survey-links");
    const links = await person.page.locator("main a[href]").evaluateAll((all) => all.map((link) => link.getAttribute("href")));
    assert.ok(links.length > 5);
    for (const [number, link] of [...new Set(links)].entries()) {
        if (link.startsWith("#")) {
            assert.equal(await person.page.locator(link).count(), 1, link);
        } else if (/\.(csv|svg)$/.test(link)) {
            assert.equal((await person.page.request.get(person.receiver.url + link)).status(), 200, link);
        } else {
            const reply = await person.page.goto(new URL(link, person.page.url()).href);
            assert.equal(reply.status(), 200, link);
            if ((reply.headers()["content-type"] ?? "").startsWith("text/html")) {
                await person.look(`linked-${number}-${link.replace(/[^a-z]+/gi, "-").slice(-30)}`);
            }
            await person.page.goto(`${person.receiver.url}/surveys/${encodeURIComponent(survey.id)}`);
        }
    }
}

/// The sheets as they leave a printer: all windows' names, on pages of A4 that hold something.
async function printSheets(person, survey) {
    await person.page.goto(`${person.receiver.url}/surveys/${encodeURIComponent(survey.id)}/sheets/measure`);
    const pdf = await person.page.pdf({ preferCSSPageSize: true });
    const file = join(tmpdir(), `truehang-sheet-${process.pid}.pdf`);
    writeFileSync(file, pdf);
    try {
        const text = execFileSync("pdftotext", [file, "-"], { encoding: "utf8" });
        for (const window of survey.rooms.flatMap((room) => room.windows)) {
            assert.ok(text.replace(/\s+/g, " ").toLowerCase().includes(window.name.toLowerCase()), `${window.name} isn’t on the printed sheets`);
        }
        const info = execFileSync("pdfinfo", [file], { encoding: "utf8" });
        assert.match(info, /Page size:\s+59[45]\.\d+ x 84[12]\.\d+ pts \(A4\)/);
        for (const [number, page] of text.split("\f").slice(0, -1).entries()) {
            assert.ok(page.trim().length > 20, `page ${number + 1} is empty`);
        }
    } finally {
        rmSync(file);
    }
}

async function aDay(browser, size, document) {
    const survey = JSON.parse(document);
    const data = mkdtempSync(join(tmpdir(), "truehang-pages-"));
    const receiver = await serve(data);
    try {
        const token = await pair(receiver);
        await send(receiver, token, document);
        const { name, ...options } = size;
        const context = await browser.newContext({ ...options, bypassCSP: size.javaScriptEnabled, locale: "en-GB" });
        const person = new Person(await context.newPage(), receiver, size);
        await hearOfArrivals(browser, person, token, document);
        await lookForTheVisit(person, survey);
        await markWhatIsDone(person);
        await askAboutAReading(person, survey);
        await cutFromRolls(person, survey);
        await setARule(person);
        await openAllThatIsLinked(person, survey);
        if (size.name === "screen") await printSheets(person, survey);
        await pairAndRefuse(person);
        await signInByName(person, survey);
        await context.close();
        const faults = [...person.faults, ...person.strangers.map((url) => `loaded from elsewhere: ${url}`)];
        console.log(`${name}: ${person.seen.size} pages looked at, ${faults.length} faults`);
        for (const fault of new Set(faults)) console.log(`  ${fault}`);
        return faults.length;
    } finally {
        receiver.process.kill("SIGKILL");
        rmSync(data, { recursive: true });
    }
}

const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
let faults = 0;
try {
    for (const size of sizes) faults += await aDay(browser, size, readFileSync(surveyFile));
} finally {
    await browser.close();
}
process.exitCode = faults === 0 ? 0 : 1;
