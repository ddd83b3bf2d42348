// SPDX-License-Identifier: Apache-2.0
#include "workroom/person_command.h"

#include "workroom/documents.h"
#include "workroom/people/password.h"
#include "workroom/people/people_shelf.h"
#include "workroom/people/sessions.h"

#include <fmt/format.h>
#include <termios.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <fstream>
#include <iostream>
#include <utility>

namespace truehang::workroom {

namespace {

int fail(const Error& error) {
    fmt::print(stderr, "truehang-workroom: {}\n", error.text);
    return refused;
}

int say(const std::string& line) { return write_out(line + "\n", "") ? 0 : refused; }

/// The terminal without what is typed being shown, until its end, or a signal's that ends the program: the terminal
/// would stay so. What stops the program waits.
class Unseen {
public:
    Unseen() {
        ::tcgetattr(STDIN_FILENO, &before());
        struct sigaction show_and_end {};
        show_and_end.sa_handler = [](int signal) {
            ::tcsetattr(STDIN_FILENO, TCSANOW, &before());
            ::raise(signal);  // by now what it is without a handler
        };
        show_and_end.sa_flags = static_cast<int>(SA_RESETHAND);
        struct sigaction wait {};
        wait.sa_handler = SIG_IGN;
        for (std::size_t i = 0; i < signals.size(); ++i) {
            ::sigaction(signals.at(i), signals.at(i) == SIGTSTP ? &wait : &show_and_end, &handled_.at(i));
        }
        auto unseen = before();
        unseen.c_lflag &= ~static_cast<tcflag_t>(ECHO);
        unseen.c_lflag |= static_cast<tcflag_t>(ECHONL);
        ::tcsetattr(STDIN_FILENO, TCSAFLUSH, &unseen);
    }
    ~Unseen() {
        ::tcsetattr(STDIN_FILENO, TCSAFLUSH, &before());
        for (std::size_t i = 0; i < signals.size(); ++i) {
            ::sigaction(signals.at(i), &handled_.at(i), nullptr);
        }
    }
    Unseen(const Unseen&) = delete;
    Unseen& operator=(const Unseen&) = delete;

private:
    static constexpr std::array signals{SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGTSTP};

    static termios& before() {
        static termios settings{};
        return settings;
    }

    std::array<struct sigaction, signals.size()> handled_{};
};

Result<std::string> line_from(std::istream& stream, const std::string& where) {
    std::string line;
    if (!std::getline(stream, line)) {
        return Error{ErrorCode::unreadable, where, where + ": there is no password in it."};
    }
    if (line.ends_with('\r')) {
        line.pop_back();
    }
    return line;
}

/// A new password, from the file or asked for twice.
Result<std::string> new_password(const PersonOptions& options) {
    if (!options.password_file.empty()) {
        std::ifstream file(options.password_file, std::ios::binary);
        if (!file) {
            return Error{
                ErrorCode::missing, options.password_file,
                options.password_file + ": this file can’t be read. Name one whose first line is the password."};
        }
        return line_from(file, options.password_file);
    }
    if (::isatty(STDIN_FILENO) == 0) {
        return Error{ErrorCode::missing, "password",
                     "A password is typed at a terminal. From elsewhere, give it with --password-file."};
    }
    const Unseen unseen;
    fmt::print(stderr, "Password of {}, at least {} letters: ", options.name, password_least);
    auto typed = line_from(std::cin, "the terminal");
    fmt::print(stderr, "The same again: ");
    const auto again = line_from(std::cin, "the terminal");
    if (!typed || !again) {
        return typed ? again.error() : typed.error();
    }
    return *typed == *again ? typed
                            : Error{ErrorCode::conflict, "password", "The two aren’t the same. Nothing was changed."};
}

int list(Archive& archive) {
    const auto people = PeopleShelf(archive).all();
    if (!people) {
        return fail(people.error());
    }
    std::string lines;
    for (const auto& person : *people) {
        const auto sessions = PersonSessions(archive).all(person.id);
        if (!sessions) {
            return fail(sessions.error());
        }
        lines += fmt::format("{}  {}, since {}, signed in on {} browsers\n", person.name, word_of(person.role),
                             person.added_at, sessions->size());
    }
    return write_out(lines.empty() ? "Nobody is written down: browsers on this machine may do everything.\n" : lines,
                     "")
               ? 0
               : refused;
}

int add(Archive& archive, const PersonOptions& options) {
    const auto role = role_of(options.role);
    if (!role) {
        return fail({ErrorCode::missing, "role", "Say with --role what they may do: surveyor, workroom or owner."});
    }
    const auto password = new_password(options);
    if (!password) {
        return fail(password.error());
    }
    const auto added = PeopleShelf(archive).add(options.name, *role, *password);
    return added ? say(fmt::format("{} may sign in now, as {}.", added->name, word_of(*role))) : fail(added.error());
}

int change(Archive& archive, const Person& person, const PersonOptions& options) {
    PeopleShelf shelf(archive);
    if (options.action == "role") {
        const auto role = role_of(options.role);
        const auto done = role ? shelf.set_role(person.id, *role)
                               : Error{ErrorCode::missing, "role", "Say with --role: surveyor, workroom or owner."};
        return done ? say(fmt::format("{} is {} now.", person.name, word_of(*role))) : fail(done.error());
    }
    if (options.action == "out") {
        const auto done = shelf.take_out(person.id);
        return done ? say(person.name + " is taken out and signed out everywhere.") : fail(done.error());
    }
    const auto password = new_password(options);
    if (!password) {
        return fail(password.error());
    }
    const auto done = shelf.set_password(person.id, *password);
    return done ? say(fmt::format("{} has a new password and is signed out everywhere.", person.name))
                : fail(done.error());
}

int see_to(const PersonOptions& options) {
    // The first may be written down before anything was served.
    const auto archive = options.action == "add" ? open_archive(options.kept) : open_standing_archive(options.kept);
    if (!archive) {
        return fail(archive.error());
    }
    if (options.action == "list") {
        return list(**archive);
    }
    if (options.name.empty()) {
        return fail({ErrorCode::missing, "name", "Whose? Give the name."});
    }
    if (options.action == "add") {
        return add(**archive, options);
    }
    const auto person = PeopleShelf(**archive).by_name(options.name);
    if (!person || !*person) {
        return person ? fail({ErrorCode::missing, "name", "There is nobody of that name here."}) : fail(person.error());
    }
    return change(**archive, **person, options);
}

}  // namespace

void add_person(CLI::App& app, PersonOptions& options, int& result) {
    auto* command = app.add_subcommand("person", "Write down who may sign in to the pages, and as what");
    add_kept_at(*command, options.kept);
    command->add_option("action", options.action, "list, add, role, password or out")
        ->required()
        ->check(CLI::IsMember({"list", "add", "role", "password", "out"}));
    command->add_option("name", options.name, "Whose; of list nobody’s");
    command->add_option("--role", options.role, "surveyor, workroom or owner")
        ->check(CLI::IsMember({"surveyor", "workroom", "owner"}));
    command->add_option("--password-file", options.password_file,
                        "A file whose first line is the password; else it is typed, unseen");
    command->callback([&] { result = see_to(options); });
}

}  // namespace truehang::workroom
