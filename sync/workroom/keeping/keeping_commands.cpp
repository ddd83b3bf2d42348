// SPDX-License-Identifier: Apache-2.0
#include "workroom/keeping/keeping_commands.h"

#include "workroom/archive/upload_shelf.h"
#include "workroom/keeping/erase.h"
#include "workroom/keeping/export_survey.h"
#include "workroom/keeping/folder_copy.h"
#include "workroom/keeping/import_survey.h"
#include "workroom/keeping/kept_folder.h"
#include "workroom/keeping/verify.h"

#include <fmt/format.h>
#include <pwd.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>

namespace truehang::workroom {

namespace {

constexpr int done = 0;
constexpr int faults_found = 1;
constexpr int refused = 2;

std::string one_line(std::string text) {
    std::ranges::replace_if(
        text, [](char c) { return static_cast<unsigned char>(c) < 0x20; }, ' ');
    return text;
}

int refuse(const Error& error) {
    fmt::print(stderr, "truehang-workroom: {}: {}\n", one_line(error.where), one_line(error.text));
    return refused;
}

std::string count_text(std::size_t count, const char* one, const char* more) {
    return fmt::format("{} {}", count, count == 1 ? one : more);
}

void list(const std::vector<Flaw>& flaws) {
    for (const Flaw& flaw : flaws) {
        fmt::print("{}: {}\n", one_line(place_of(flaw)), one_line(flaw.text));
    }
}

int verify(const KeepingOptions& options) {
    const auto kept = KeptRecords::open(options.kept);
    if (!kept) {
        return refuse(kept.error());
    }
    const auto looked = look_through(**kept);
    if (!looked) {
        return refuse(looked.error());
    }
    list(looked->flaws);
    for (const auto& file : looked->loose) {
        fmt::print("{}: No record tells of it: left by an upload that was cut off, or put there by hand.\n",
                   one_line(file));
    }
    if (const auto unfinished = unfinished_in((*kept)->folder() / "uploads"); unfinished.uploads > 0) {
        fmt::print("{}: {} of photos ({:.1f} MB), passed over: their digest is asked when they are whole.\n",
                   options.kept.data, count_text(unfinished.uploads, "unfinished upload", "unfinished uploads"),
                   static_cast<double>(unfinished.bytes) / 1e6);
    }
    fmt::print("{}: {}: {}.\n", (*kept)->place(), amounts(*looked),
               looked->flaws.empty() ? "all whole" : count_text(looked->flaws.size(), "fault", "faults"));
    return looked->flaws.empty() ? done : faults_found;
}

int say_copied(const std::string& place, const std::string& what, const Copied& copied) {
    list(copied.flaws);
    fmt::print("{}: {} {} documents and {} photos ({:.1f} MB){}\n", place, what, copied.documents, copied.photos,
               static_cast<double>(copied.photo_bytes) / 1e6,
               copied.flaws.empty() ? "."
                                    : fmt::format("; {} not whole where they come from.",
                                                  count_text(copied.flaws.size(), "photo is", "photos are")));
    return copied.flaws.empty() ? done : faults_found;
}

int backup(const KeepingOptions& options) {
    auto folder = KeptFolder::open(options.kept.data);
    if (!folder) {
        return refuse(folder.error());
    }
    auto copy = FolderCopy::begin(options.other);
    if (!copy) {
        return refuse(copy.error());
    }
    const auto copied = copy.value().fill(folder.value());
    if (!copied) {
        return refuse(copied.error());
    }
    if (const auto finished = copy.value().finish(); !finished) {
        return refuse(finished.error());
    }
    return say_copied(options.other, "backed up", *copied);
}

/// Takes what isn't whole out of the copy and says what that was.
Result<std::size_t> left_out(const FolderCopy& copy) {
    std::size_t count = 0;
    for (int round = 0; round < 2; ++round) {
        auto made = KeptFolder::open(copy.part());
        const auto looked = made ? look_through(made.value()) : Result<Looked>(made.error());
        if (!looked) {
            return looked.error();
        }
        if (looked->flaws.empty()) {
            return count;
        }
        list(looked->flaws);
        count += looked->flaws.size();
        if (const auto gone = leave_out(copy.part(), looked->flaws); !gone) {
            return gone.error();
        }
    }
    return Error{ErrorCode::damaged, copy.part().string(), "What was read still isn’t whole. Use another backup."};
}

int restore_what_is_whole(const KeepingOptions& options, KeptFolder& backup, const Looked& looked) {
    auto copy = FolderCopy::begin(options.kept.data);
    if (!copy) {
        return refuse(copy.error());
    }
    const bool broken =
        std::ranges::any_of(looked.flaws, [](const Flaw& flaw) { return flaw.of == Flaw::Of::records; });
    const auto copied = broken ? copy.value().fill_with_what_reads(backup) : copy.value().fill(backup);
    if (!copied) {
        return refuse(copied.error());
    }
    if (broken) {
        list(looked.flaws);
    }
    const auto missing = left_out(*copy);
    if (!missing) {
        return refuse(missing.error());
    }
    auto made = KeptFolder::open(copy->part());
    const auto there = made ? look_through(made.value()) : Result<Looked>(made.error());
    if (!there) {
        return refuse(there.error());
    }
    if (const auto finished = copy.value().finish(); !finished) {
        return refuse(finished.error());
    }
    fmt::print("{}: restored {}; what is named above was left out.\n", options.kept.data, amounts(*there));
    return faults_found;
}

int restore(const KeepingOptions& options) {
    auto backup = KeptFolder::open(options.other);
    if (!backup) {
        return refuse(backup.error());
    }
    const auto looked = look_through(backup.value());
    if (!looked) {
        return refuse(looked.error());
    }
    if (!looked->flaws.empty() && options.what_is_whole) {
        return restore_what_is_whole(options, backup.value(), *looked);
    }
    if (!looked->flaws.empty()) {
        list(looked->flaws);
        return refuse({ErrorCode::damaged, options.other,
                       "This backup has " + count_text(looked->flaws.size(), "fault", "faults") +
                           ". Nothing was restored: use another one, or --what-is-whole to leave out what is named."});
    }
    auto copy = FolderCopy::begin(options.kept.data);
    if (!copy) {
        return refuse(copy.error());
    }
    const auto copied = copy.value().fill(backup.value());
    if (!copied) {
        return refuse(copied.error());
    }
    if (!copied->flaws.empty()) {
        list(copied->flaws);
        return refuse({ErrorCode::damaged, options.other, "It changed while it was read. Nothing was restored."});
    }
    const auto finished = copy.value().finish();
    return finished ? say_copied(options.kept.data, "restored", *copied) : refuse(finished.error());
}

/// The name that the system has for whoever runs this.
std::string user_name() {
    const auto* user = ::getpwuid(::geteuid());
    return user != nullptr ? user->pw_name : std::to_string(::geteuid());
}

sync::Time now() { return std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now()); }

int export_one(const KeepingOptions& options) {
    const auto kept = KeptRecords::open(options.kept);
    if (!kept) {
        return refuse(kept.error());
    }
    const auto exported = options.visit ? export_visit(**kept, options.survey, options.other)
                                        : export_survey(**kept, options.survey, options.other);
    if (!exported) {
        return refuse(exported.error());
    }
    list(exported->flaws);
    fmt::print("{}: {}, {}, {} of {}{}.\n", one_line(options.other),
               count_text(exported->revisions, "revision", "revisions"),
               count_text(exported->photos, "photo", "photos"),
               count_text(exported->rolls, "version of rolls", "versions of rolls"), one_line(options.survey),
               exported->missing == 0 ? "" : "; not here: " + count_text(exported->missing, "photo", "photos"));
    return exported->flaws.empty() ? done : faults_found;
}

std::string new_of(std::size_t all, std::size_t before, const char* one, const char* more) {
    const auto text = count_text(all, one, more);
    return before == 0 ? text : fmt::format("{} ({} here before)", text, before);
}

int import_one(const KeepingOptions& options) {
    const auto imported = import_survey(options.kept, options.other, now());
    if (!imported) {
        return refuse(imported.error());
    }
    fmt::print("{}: imported {}, {}, {}.\n", one_line(imported->survey),
               new_of(imported->revisions, imported->revisions_before, "revision", "revisions"),
               new_of(imported->photos, imported->photos_before, "photo", "photos"),
               new_of(imported->rolls, imported->rolls_before, "version of rolls", "versions of rolls"));
    return done;
}

int erase(const KeepingOptions& options) {
    const auto erased =
        erase_survey(options.kept, {options.survey, options.by.empty() ? user_name() : options.by, now()});
    if (!erased) {
        return refuse(erased.error());
    }
    if (erased->before) {
        fmt::print("{}: it was erased before; what may have been left of it is overwritten.\n",
                   one_line(options.survey));
        return done;
    }
    fmt::print("{}: erased for good: {}, {}, {}. Copies made before still hold it.\n", one_line(options.survey),
               count_text(static_cast<std::size_t>(erased->revisions), "revision", "revisions"),
               count_text(static_cast<std::size_t>(erased->photos), "photo", "photos"),
               count_text(static_cast<std::size_t>(erased->rolls), "version of rolls", "versions of rolls"));
    return done;
}

void add_export(CLI::App& app, KeepingOptions& options, int& result) {
    auto* command = app.add_subcommand(
        "export",
        "Write one survey as one zip: every revision as it came, photos, rolls and receipts.\n"
        "`import` takes it in. With --visit instead the newest revision with its photos as a visit’s file, which the\n"
        "app takes in (name it ….truehang.zip). Nothing is written over. Works while the folder is served.\n"
        "Ends with 0, with 1 where photos that aren’t whole were left out (they are named), 2 where nothing was made.");
    add_kept_at(*command, options.kept);
    command->add_option("survey", options.survey, "The survey’s id, as its page’s address has it")->required();
    command->add_option("out", options.other, "The file to make; it mustn’t be there yet")->required();
    command->add_flag("--visit", options.visit, "The newest revision alone, as the app takes it in");
    command->callback([&] { result = export_one(options); });
}

void add_import(CLI::App& app, KeepingOptions& options, int& result) {
    auto* command = app.add_subcommand(
        "import",
        "Take in a survey document, a visit’s file, or what `export` wrote, as though a device had sent it.\n"
        "All of it is checked first: a file that isn’t sound is refused, and so is a revision that is here with other\n"
        "content. The same content twice is no fault. Works while the folder is served.\n"
        "Ends with 0, or 2 where nothing was taken in.");
    add_kept_at(*command, options.kept);
    command->add_option("file", options.other, "The document or zip")->required();
    command->callback([&] { result = import_one(options); });
}

void add_erase(CLI::App& app, KeepingOptions& options, int& result) {
    auto* command = app.add_subcommand(
        "erase",
        "Erase a survey for good: all its revisions, rolls, plans, and the photos that no other survey names.\n"
        "It can’t be undone. That it was erased, when, by whom and how much stays known, and a phone that sends it\n"
        "again is refused. All records are written anew, so that nothing of it can be read from the files: that takes\n"
        "as much room again as they have, and phones wait meanwhile. Works while the folder is served. Copies that\n"
        "were made before still hold it, and so may blocks that the disk itself has freed.\n"
        "Ends with 0, or 2 where it was refused or has to be run again to be done.");
    add_kept_at(*command, options.kept);
    command->add_option("survey", options.survey, "The survey’s id, as its page’s address has it")->required();
    command->add_option("--by", options.by, "Who erases it; the name of who runs this where none is given");
    command->callback([&] { result = erase(options); });
}

void add_verify(CLI::App& app, KeepingOptions& options, int& result) {
    auto* command = app.add_subcommand(
        "verify",
        "Look whether all that was received is whole: every document, photo, roll and house rule.\n"
        "Says one line for each fault, then a count. Works while the folder is served, on backups of it, and on a\n"
        "database, whose own pages the database checks.\n"
        "Ends with 0 where all is whole, 1 where faults were found, 2 where nothing could be looked at.");
    add_kept_at(*command, options.kept);
    command->callback([&] { result = verify(options); });
}

void add_backup(CLI::App& app, KeepingOptions& options, int& result) {
    auto* command = app.add_subcommand(
        "backup",
        "Copy the folder as it is at one moment, also while it is served.\n"
        "The copy is a folder that `serve --data` could serve as it is. It stands under its name only once it is\n"
        "whole and on the disk; nothing is ever written over. It holds the clients’ names, photos and the digests\n"
        "of tokens: keep it as the folder itself is kept. What is erased later stays in it.\n"
        "Ends with 0, with 1 where photos were copied that aren’t whole (they are named), 2 where nothing was made.");
    command->add_option("--data", options.kept.data, "The folder that keeps what comes in")->required();
    command->add_option("out", options.other, "The folder to make; it mustn’t be there yet")->required();
    command->callback([&] { result = backup(options); });
}

void add_restore(CLI::App& app, KeepingOptions& options, int& result) {
    auto* command = app.add_subcommand(
        "restore",
        "Make a folder to serve from a backup, which is looked through first as `verify` does.\n"
        "A backup with faults is refused, or with --what-is-whole restored without what isn’t whole, which is named;\n"
        "phones then send those photos and surveys again that they still have. What was erased since the backup comes\n"
        "back: erase it again.\n"
        "Ends with 0, with 1 where something was left out, 2 where nothing was restored.");
    command->add_option("--data", options.kept.data, "The folder to make; it mustn’t be there, or be empty")
        ->required();
    command->add_option("backup", options.other, "The backup")->required();
    command->add_flag("--what-is-whole", options.what_is_whole, "Leave out what isn’t whole, and say what that is");
    command->callback([&] { result = restore(options); });
}

}  // namespace

void add_keeping(CLI::App& app, KeepingOptions& options, int& result) {
    add_verify(app, options, result);
    add_backup(app, options, result);
    add_restore(app, options, result);
    add_export(app, options, result);
    add_import(app, options, result);
    add_erase(app, options, result);
}

}  // namespace truehang::workroom
