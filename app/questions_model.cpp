// SPDX-License-Identifier: Apache-2.0
#include "questions_model.h"

#include "figure_rows.h"
#include "open_visit.h"
#include "protocol/questions.h"
#include "reading_history.h"
#include "survey/counted.h"
#include "survey_keeping.h"
#include "whereabouts.h"
#include "writing.h"

#include <algorithm>

namespace truehang {

namespace {

QString key_of(const VisitQuestion& question) { return QString::number(question.number); }

bool is_open(const VisitQuestion& question) { return question.answers.empty(); }

/// The reading that counts at the station that is asked about; null where none does or no station is named.
const Reading* reading_at(const Window* window, const VisitQuestion& question) {
    if (window == nullptr || question.station.empty() || !window->shape.known()) {
        return nullptr;
    }
    const auto counted = counted_readings(*window, *window->shape.known());
    const auto* found = find_counted(counted, question.station);
    return found != nullptr && !is_proposed(*found->reading) ? found->reading : nullptr;
}

sync::AnswerReading answer_reading(const Reading& reading, const LengthStyle& style) {
    sync::AnswerReading answer{reading.station, bytes(reading_text(reading, style))};
    if (reading.angle) {
        answer.value_deg = reading.angle->degrees();
    } else if (reading.value) {
        answer.value_mm = reading.value->mm();
    }
    return answer;
}

/// Edits made before are in the store by now: its revision is the first that is known to carry the reading.
Result<Done> keep_in(Store& store, sync::QuestionAnswer answer) {
    if (answer.reading) {
        const auto visit = store.summary(answer.survey);
        if (!visit) {
            return visit.error();
        }
        answer.revision = visit->revision;
    }
    const sync::AnswerReading reading = answer.reading.value_or(sync::AnswerReading{});
    return store.keep_answer({answer.survey,
                              answer.number,
                              answer.id,
                              answer.words,
                              reading.station,
                              reading.typed,
                              answer.by,
                              answer.at,
                              {},
                              sync::write_answer(answer)});
}

QString answer_says(const VisitAnswer& answer) {
    QStringList said{shown(answer.typed), shown(answer.words)};
    said.removeAll(QString());
    const QString who = shown(answer.by.empty() ? answer.device : answer.by);
    const QString when = time_shown(answer.at);
    return who.isEmpty() ? QuestionsModel::tr("Answered %1: %2").arg(when, said.join(u". "))
                         : QuestionsModel::tr("Answered by %1, %2: %3").arg(who, when, said.join(u". "));
}

}  // namespace

QuestionsModel::QuestionsModel(OpenVisit& open, QObject* parent)
    : QObject(parent),
      open_(open),
      rows_({"question", "place", "words", "who", "answers", "chosen", "canMeasure", "reading", "typed", "spoken"}) {
    connect(&open_, &OpenVisit::opened, this, [this] {
        questions_.clear();
        chosen_.clear();
        fault_.clear();
        show();
        read();
    });
    connect(&open_, &OpenVisit::changed, this, &QuestionsModel::show);
    connect(&open_, &OpenVisit::windowChanged, this, &QuestionsModel::changed);
}

void QuestionsModel::read() {
    if (!open_.isOpen()) {
        return;
    }
    open_.keeping().post(
        this, [visit = open_.survey().id](Store& store) { return store.questions(visit); },
        [this, visit = open_.visitId()](Result<std::vector<VisitQuestion>> questions) {
            if (questions && visit == open_.visitId()) {
                questions_ = std::move(questions).value();
                std::ranges::stable_sort(questions_, {}, [](const VisitQuestion& one) { return !is_open(one); });
                show();
            }
        });
}

int QuestionsModel::count() const { return static_cast<int>(std::ranges::count_if(questions_, is_open)); }

int QuestionsModel::countHere() const {
    return static_cast<int>(std::ranges::count_if(questions_, [this](const VisitQuestion& one) {
        return is_open(one) && !open_.windowId().isEmpty() && truehang::shown(one.window) == open_.windowId();
    }));
}

QString QuestionsModel::line() const {
    const int open = count();
    return open == 0   ? QString()
           : open == 1 ? tr("The workroom asks one thing about this visit.")
                       : tr("The workroom asks %1 things about this visit.").arg(open);
}

const VisitQuestion* QuestionsModel::find(const QString& question) const {
    const auto found = std::ranges::find(questions_, question, key_of);
    return found == questions_.end() ? nullptr : &*found;
}

QString QuestionsModel::placeOf(const VisitQuestion& question) const {
    const Window* window = open_.window(truehang::shown(question.window));
    if (window == nullptr) {
        return tr("A window that was taken out");
    }
    const QString title = open_.titleOf(truehang::shown(question.window));
    return question.station.empty() ? title : tr("%1: %2").arg(title, station_says(*window, question.station));
}

QString QuestionsModel::wordsPlace(const QString& question) const {
    return QStringLiteral("question/%1/%2").arg(open_.visitId(), question);
}

ShownRows::Row QuestionsModel::rowOf(const VisitQuestion& question) const {
    const QString key = key_of(question);
    const Window* window = open_.window(truehang::shown(question.window));
    const Reading* reading = reading_at(window, question);
    const QString words = truehang::shown(question.words);
    const QString place = placeOf(question);
    QStringList answers;
    for (const VisitAnswer& answer : question.answers) {
        answers.append(answer_says(answer));
    }
    const QString asks = tr("%1 asks, %2").arg(truehang::shown(question.by), time_shown(question.at));
    return {key,
            place,
            words,
            asks,
            answers.join(QLatin1Char('\n')),
            key == chosen_,
            window != nullptr,
            reading != nullptr ? reading_text(*reading, length_style(open_.survey())) : QString(),
            open_.place().text(wordsPlace(key)),
            QStringLiteral("%1. %2").arg(place, words)};
}

void QuestionsModel::show() {
    QList<ShownRows::Row> rows;
    if (open_.isOpen()) {
        if (find(chosen_) == nullptr || !is_open(*find(chosen_))) {
            chosen_ = !questions_.empty() && is_open(questions_.front()) ? key_of(questions_.front()) : QString();
        }
        for (const VisitQuestion& one : questions_) {
            rows.append(rowOf(one));
        }
    }
    rows_.setRows(rows);
    emit changed();
}

void QuestionsModel::choose(const QString& question) {
    chosen_ = question;
    fault_.clear();
    show();
}

void QuestionsModel::typing(const QString& question, const QString& words) {
    open_.place().setText(wordsPlace(question), words);
    rows_.setValue(rows_.indexOf(question), "typed", words, true);
}

void QuestionsModel::measureAgain(const QString& question) {
    if (const VisitQuestion* asked = find(question)) {
        emit wanted(truehang::shown(asked->window), truehang::shown(asked->station));
    }
}

void QuestionsModel::answer(const QString& question, bool withReading) {
    const VisitQuestion* asked = find(question);
    if (asked == nullptr || keeping_ || !is_open(*asked)) {  // a second tap is no second answer
        return;
    }
    sync::QuestionAnswer answer;
    answer.words = bytes(open_.place().text(wordsPlace(question)).trimmed());
    if (const Reading* reading = reading_at(open_.window(truehang::shown(asked->window)), *asked);
        withReading && reading != nullptr) {
        answer.reading = answer_reading(*reading, length_style(open_.survey()));
    }
    fault_ = answer.words.size() > sync::words_limit
                 ? tr("That is too long: an answer has at most %1 letters.").arg(sync::words_limit)
             : answer.words.empty() && !answer.reading ? tr("Write what to answer, or measure there again.")
                                                       : QString();
    if (!fault_.isEmpty()) {
        emit changed();
        return;
    }
    answer.survey = asked->visit;
    answer.number = asked->number;
    answer.id = open_.newId();
    answer.by = open_.survey().measured_by;
    answer.at = open_.now();
    keep(answer);
}

void QuestionsModel::keep(const sync::QuestionAnswer& answer) {
    keeping_ = true;
    open_.keeping().post(
        this, [answer](Store& store) { return keep_in(store, answer); },
        [this, words = wordsPlace(QString::number(answer.number))](const Result<Done>& done) {
            keeping_ = false;
            fault_ = fault_of(done);
            if (done) {
                open_.place().forget(words);
                open_.askStanding();
                emit answered();
            }
            read();
            emit changed();
        });
}

}  // namespace truehang
