// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "document/rolls_document.h"
#include "figures/figures.h"
#include "sheet/csv.h"
#include "sheet/template_svg.h"
#include "workroom/choices_command.h"
#include "workroom/documents.h"
#include "workroom/keeping/keeping_commands.h"
#include "workroom/person_command.h"
#include "workroom/revoke_command.h"
#include "workroom/rules_command.h"
#include "workroom/serve.h"
#include "workroom/site/sheet_page.h"
#include "workroom/sun_command.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <cstdio>
#include <cstdlib>

namespace {

using namespace truehang;
using workroom::refused;

int print_figures(const std::string& path) {
    const auto survey = workroom::survey_or_faults(path);
    return survey && workroom::write_out(write_figures(work_out(*survey)), "") ? 0 : refused;
}

int print_plan(const std::string& survey_path, const std::string& rolls_path) {
    const auto survey = workroom::survey_or_faults(survey_path);
    if (!survey) {
        return refused;
    }
    const auto came = workroom::rolls_or_faults(rolls_path, *survey);
    return came && workroom::write_out(write_roll_plan(plan_house(*survey, *came)), "") ? 0 : refused;
}

struct SheetOptions {
    std::string survey, window, layer, out;
    std::string kind = "measure";
    std::string paper, unit, what;
    std::string rolls;  ///< of the cutting sheets, the document of the rolls that came
};

/// The room and the window of "ROOM/ID" or "ID"; false and a line on standard error where there is no such window.
bool place_window(const Survey& survey, const SheetOptions& options, SheetsAsked& asked) {
    const auto place = workroom::find_window(survey, options.window, options.layer);
    if (!place) {
        fmt::print(stderr, "{}: the survey has no such window or layer.\n", options.window);
        return false;
    }
    asked.room = place->room->id;
    asked.window = place->window->id;
    asked.layer = options.layer;
    return true;
}

SheetStyle style_of(const Survey& survey, const SheetOptions& options) {
    SheetStyle style = sheet_style_for(survey);
    style.unit = length_unit(options.unit).value_or(style.unit);
    return style;
}

/// The paper of the option, else of the locale that a program prints by.
Paper paper_for(const SheetOptions& options) {
    for (const char* name : {"LC_ALL", "LC_PAPER", "LANG"}) {
        const char* locale = std::getenv(name);
        if (options.paper.empty() && locale != nullptr && *locale != '\0') {
            return paper_of_locale(locale);
        }
    }
    return paper_of(options.paper).value_or(Paper::a4);
}

int write_sheet(const SheetOptions& options) {
    const auto survey = workroom::survey_or_faults(options.survey);
    workroom::SheetPageAsked asked;
    if (!survey || (!options.window.empty() && !place_window(*survey, options, asked.sheets))) {
        return refused;
    }
    asked.sheets.kind = sheet_kind(options.kind).value_or(SheetKind::measure);
    asked.style = style_of(*survey, options);
    asked.paper = paper_for(options);
    asked.standalone = true;
    const auto figures = work_out(*survey);
    if (!options.rolls.empty()) {
        const auto came = workroom::rolls_or_faults(options.rolls, *survey);
        if (!came) {
            return refused;
        }
        asked.sheets.rolls = cuts_as_planned(*survey, figures, *came, plan_house(*survey, *came));
    }
    const auto no_photo = [](const std::string&) { return false; };
    const auto page = workroom::sheets_page(*survey, figures, asked, no_photo);
    if (!page) {
        fmt::print(stderr, "{}: nothing is worked that such a sheet could say.\n",
                   options.window.empty() ? options.survey : options.window);
        return refused;
    }
    return workroom::write_out(*page, options.out) ? 0 : refused;
}

int write_csv(const SheetOptions& options) {
    const auto survey = workroom::survey_or_faults(options.survey);
    const auto what = csv_of_word(options.what);
    return survey && what && workroom::write_out(csv_of(*survey, work_out(*survey), *what), options.out) ? 0 : refused;
}

int write_template(const SheetOptions& options) {
    const auto survey = workroom::survey_or_faults(options.survey);
    SheetsAsked asked;
    if (!survey || !place_window(*survey, options, asked)) {
        return refused;
    }
    const auto place = workroom::find_window(*survey, options.window, options.layer);
    const auto svg = template_svg(*survey, work_out(*survey), place->index, style_of(*survey, options));
    if (!svg) {
        fmt::print(stderr, "{}: {}\n", options.window, svg.error().text);
        return refused;
    }
    return workroom::write_out(*svg, options.out) ? 0 : refused;
}

void add_figures(CLI::App& app, std::string& path, int& result) {
    auto* command = app.add_subcommand("figures", "Work out a survey’s figures and print them as a document");
    command->add_option("survey", path, "The survey document, or - for standard input")->required();
    command->callback([&] { result = print_figures(path); });
}

void add_plan(CLI::App& app, std::string& survey, std::string& rolls, int& result) {
    auto* command = app.add_subcommand("plan", "Plan what is cut from the rolls that came, and print it as a document");
    command->add_option("survey", survey, "The survey document, or - for standard input")->required();
    command->add_option("rolls", rolls, "The rolls document")->required();
    command->callback([&] { result = print_plan(survey, rolls); });
}

void add_survey_and_out(CLI::App& command, SheetOptions& options) {
    command.add_option("survey", options.survey, "The survey document, or - for standard input")->required();
    command.add_option("-o,--out", options.out, "The file to write; standard output where none is given");
}

void add_unit(CLI::App& command, SheetOptions& options) {
    command.add_option("--unit", options.unit, "mm or in; the survey’s own where none is given")
        ->check(CLI::IsMember({"mm", "in"}));
}

void add_sheet(CLI::App& app, SheetOptions& options, int& result) {
    auto* command = app.add_subcommand("sheet", "Write sheets as one page that prints on A4 or US Letter");
    add_survey_and_out(*command, options);
    command
        ->add_option("--kind", options.kind, "measure, cutting (of the whole house), making, hanging, light or agreed")
        ->check(CLI::IsMember({"measure", "cutting", "making", "hanging", "light", "agreed"}))
        ->capture_default_str();
    command->add_option("--window", options.window, "The window’s id, or ROOM/ID; all windows where none is given");
    command->add_option("--layer", options.layer, "The layer’s id; all of the window’s where none is given");
    command->add_option("--paper", options.paper, "a4 or letter; the locale’s where none is given")
        ->check(CLI::IsMember({"a4", "letter"}));
    command->add_option("--rolls", options.rolls, "The rolls that came: cutting sheets are by their plan");
    add_unit(*command, options);
    command->callback([&] { result = write_sheet(options); });
}

void add_csv(CLI::App& app, SheetOptions& options, int& result) {
    auto* command = app.add_subcommand("csv", "Write the orders or all pieces as a table (RFC 4180)");
    add_survey_and_out(*command, options);
    command->add_option("--what", options.what, "orders or pieces")
        ->required()
        ->check(CLI::IsMember({"orders", "pieces"}));
    command->callback([&] { result = write_csv(options); });
}

void add_template(CLI::App& app, SheetOptions& options, int& result) {
    auto* command = app.add_subcommand("template", "Write the top of an arch or a gable at 1 : 1 as SVG");
    add_survey_and_out(*command, options);
    command->add_option("--window", options.window, "The window’s id, or ROOM/ID")->required();
    add_unit(*command, options);
    command->callback([&] { result = write_template(options); });
}

void add_serve(CLI::App& app, workroom::ServeOptions& options, int& result) {
    auto* command = app.add_subcommand("serve", "Receive surveys and photos, and show them as pages");
    workroom::add_kept_at(*command, options.kept);
    command->add_option("--listen", options.listen, "The IP address to listen on")->capture_default_str();
    command->add_option("--port", options.port, "The port; 0 for any that is free")->capture_default_str();
    command->add_option("--certificate", options.certificate, "PEM file with the certificate and its chain");
    command->add_option("--key", options.key, "PEM file with the certificate’s key");
    command->add_flag("--without-tls", options.without_tls, "Listen beyond this machine without TLS");
    command->add_flag("--sign-in", options.sign_in, "Ask who it is before pages on this machine too (behind a proxy)");
    command->add_flag("--log", options.log, "Say each answer in a line of JSON on standard error");
    command->add_option("--name", options.name, "What the workroom calls itself to devices")->capture_default_str();
    command
        ->add_option("--reached-at", options.reached_at,
                     "The address to tell phones, as https://workroom.example.org, where it isn’t the one listened on")
        ->check(CLI::Validator(
            [](std::string& given) {
                const bool known = given.starts_with("https://") || given.starts_with("http://");
                return known ? std::string() : std::string("an address begins with https:// or http://");
            },
            "URL"));
    command->add_option("--pairing-code-file", options.pairing_code_file,
                        "Write the first pairing code to this file too");
    command->add_option("--header-seconds", options.header_seconds, "How long a request’s headers may take")
        ->check(CLI::Range(0.05, 3600.0))
        ->capture_default_str();
    command->add_option("--idle-seconds", options.idle_seconds, "How long a connection may rest between requests")
        ->check(CLI::Range(0.05, 3600.0))
        ->capture_default_str();
    command->add_option("--stall-seconds", options.stall_seconds, "How long a body may stand still")
        ->check(CLI::Range(0.05, 3600.0))
        ->capture_default_str();
    command->callback([&] { result = workroom::serve(options); });
}

void add_pair(CLI::App& app, workroom::KeptAt& kept, int& result) {
    auto* command = app.add_subcommand(
        "pair", "Print a new one-time code to pair a device with, or to sign in while no people are written down");
    workroom::add_kept_at(*command, kept);
    command->callback([&] { result = workroom::print_pairing_code(kept); });
}

}  // namespace

int main(int argc, char** argv) {
    CLI::App app("The workroom’s side of Truehang: receives surveys, works out figures, prints sheets.",
                 "truehang-workroom");
    app.require_subcommand(1);
    int result = 0;
    std::string survey;
    std::string rolls;
    workroom::KeptAt pairing;
    std::string rules;
    SheetOptions sheet;
    workroom::ChoicesOptions choices;
    workroom::ServeOptions serving;
    workroom::RevokeOptions revoking;
    workroom::PersonOptions person;
    workroom::KeepingOptions keeping;
    add_figures(app, survey, result);
    add_plan(app, survey, rolls, result);
    add_sheet(app, sheet, result);
    workroom::add_choices(app, choices, result);
    workroom::add_rules(app, rules, result);
    add_csv(app, sheet, result);
    add_template(app, sheet, result);
    workroom::add_sun(app, result);
    add_serve(app, serving, result);
    add_pair(app, pairing, result);
    workroom::add_revoke(app, revoking, result);
    workroom::add_person(app, person, result);
    workroom::add_keeping(app, keeping, result);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return app.exit(error) == 0 ? 0 : refused;
    } catch (const std::exception& error) {
        fmt::print(stderr, "truehang-workroom: {}\n", error.what());
        return refused;
    }
    return result;
}
