// SPDX-License-Identifier: Apache-2.0
#include "visit_file_model.h"

#include "devices.h"
#include "document/document.h"
#include "open_visit.h"
#include "survey_keeping.h"
#include "visit_state.h"
#include "writing.h"

#include <QFile>
#include <QRegularExpression>
#include <QTemporaryFile>

namespace truehang {

namespace {

/// What of a file's visit is here already.
enum class Here { no, as_it_is, otherwise, damaged };

struct Standing {
    Here here = Here::no;
    bool removed = false;
};

std::string document_without_revision(Survey survey) {
    survey.revision.reset();
    survey.parents.reset();
    return write_survey(survey, false);
}

Result<Standing> standing_here(Store& store, const Survey& survey) {
    const auto kept = store.visit(survey.id);
    if (!kept && kept.error().code == ErrorCode::missing) {
        return Standing{};
    }
    if (!kept) {
        return kept.error().code == ErrorCode::damaged ? Result<Standing>(Standing{Here::damaged, false})
                                                       : kept.error();
    }
    const auto summary = store.summary(survey.id);
    if (!summary) {
        return summary.error();
    }
    const bool same = document_without_revision(*kept) == document_without_revision(survey);
    return Standing{same ? Here::as_it_is : Here::otherwise, summary->removed};
}

/// A file that has no path of its own (as another program's, on a phone) is copied first.
Result<std::optional<VisitFile>> open_chosen(const QUrl& file, const LongWork& work) {
    if (file.isLocalFile()) {
        return VisitFile::open(file.toLocalFile().toStdString(), work);
    }
    QFile chosen(file.toString());
    QTemporaryFile copy;
    if (!chosen.open(QIODevice::ReadOnly) || !copy.open()) {
        return Error{ErrorCode::io, bytes(chosen.fileName()),
                     bytes(VisitFileModel::tr("The file can’t be opened. Nothing was taken in."))};
    }
    while (!chosen.atEnd() && copy.size() <= visit_file_limits::file_bytes) {
        const QByteArray piece = chosen.read(1 << 20);
        if (work.stopped()) {
            return std::optional<VisitFile>();
        }
        if (piece.isEmpty() || copy.write(piece) != piece.size()) {
            return Error{ErrorCode::io, bytes(chosen.fileName()),
                         bytes(VisitFileModel::tr("The file can’t be read whole. Nothing was taken in."))};
        }
    }
    copy.close();
    return VisitFile::open(copy.fileName().toStdString(), work);
}

/// The sentence, and how many photos the file lacks.
QString with_missing(const QString& says, int missing) {
    return missing == 0   ? says
           : missing == 1 ? VisitFileModel::tr("%1 1 photo isn’t in it.").arg(says)
                          : VisitFileModel::tr("%1 %2 photos aren’t in it.").arg(says).arg(missing);
}

}  // namespace

/// A file on its way in.
struct VisitFileModel::Coming {
    VisitFile file;
    Standing standing;
    QString kept_as;  // the id
};

VisitFileModel::VisitFileModel(OpenVisit& open, Devices& devices, QObject* parent)
    : QObject(parent), open_(open), devices_(devices) {
    connect(&open_, &OpenVisit::opened, this, [this] {
        written_.clear();
        emit changed();
        emit waitsChanged();
    });
    connect(&open_, &OpenVisit::standingChanged, this, &VisitFileModel::waitsChanged);
    connect(&aside_, &WorkAside::progressed, this, [this](int percent) {
        if (writing_) {
            percent_ = percent;
            emit progressed();
        } else if (percent / 2 > percent_) {  // the other half is keeping its photos
            percent_ = percent / 2;
            emit progressed();
        }
    });
}

QString VisitFileModel::doing() const { return working_ ? doing_.arg(percent_) : QString(); }

QString VisitFileModel::waits() const {
    return open_.isOpen() && waits_for_a_day(open_.summary(), open_.now())
               ? tr("Not sent to the workroom for a day. Until it is, a file keeps it safe.")
               : QString();
}

QString VisitFileModel::filter() { return tr("Visits (*%1)").arg(shown(visit_file_ending)); }

void VisitFileModel::start(const QString& doing) {
    working_ = true;
    percent_ = 0;
    doing_ = doing;
    line_.clear();
    taken_in_.clear();
    aside_.begin();
    emit changed();
    emit progressed();
}

void VisitFileModel::end(const QString& line) {
    working_ = false;
    line_ = line;
    emit changed();
    emit progressed();
}

void VisitFileModel::stop() { aside_.stop(); }

void VisitFileModel::forget() {
    if (!working_) {
        line_.clear();
        taken_in_.clear();
        written_.clear();
        emit changed();
    }
}

bool VisitFileModel::handOn() { return written() && devices_.share->share(written_); }

/// Two visits may have one title: what stands there already isn't written over.
QString VisitFileModel::freePlace() const {
    static const QRegularExpression not_in_names(QStringLiteral("[^\\w -]+"));
    QString name = shown(open_.survey().title).remove(not_in_names).trimmed().left(80);
    name = name.isEmpty() ? open_.visitId() : name;
    const QString folder = devices_.files->documents().toLocalFile();
    QString file = QStringLiteral("%1/%2%3").arg(folder, name, shown(visit_file_ending));
    for (int number = 2; QFile::exists(file); ++number) {
        file = QStringLiteral("%1/%2, %3%4").arg(folder, name).arg(number).arg(shown(visit_file_ending));
    }
    return file;
}

void VisitFileModel::write() {
    if (working_ || !open_.isOpen()) {
        return;
    }
    writing_ = true;
    written_.clear();
    start(tr("Writing the file, %1 %"));
    open_.keeping().post(
        this, [id = open_.survey().id](Store& store) { return visit_to_pack(store, id); },
        [this, file = freePlace()](Result<VisitToPack> visit) {
            if (!visit) {
                end(fault_of(visit));
                return;
            }
            aside_.run([file, visit = std::move(visit).value()](
                           const LongWork& work) { return write_visit_file(file.toStdString(), visit, work); },
                       [this, file](const Result<std::optional<PackedVisit>>& written) { wrote(written, file); });
        });
}

void VisitFileModel::wrote(const Result<std::optional<PackedVisit>>& written, const QString& file) {
    if (!written) {
        end(tr("The file couldn’t be written. %1").arg(fault_of(written)));
    } else if (!written.value()) {
        end(tr("Stopped. Nothing was written."));
    } else {
        written_ = QUrl::fromLocalFile(file);
        end(with_missing(tr("Written: %1.").arg(file), written.value()->missing));
    }
}

void VisitFileModel::takeIn(const QUrl& file) {
    if (working_) {
        return;
    }
    writing_ = false;
    start(tr("Taking the visit in, %1 %"));
    aside_.run([file](const LongWork& work) { return open_chosen(file, work); },
               [this](Result<std::optional<VisitFile>> opened) {
                   if (!opened) {
                       end(fault_of(opened));
                   } else if (!opened.value()) {
                       end(tr("Stopped. Nothing was taken in."));
                   } else {
                       look(std::make_shared<Coming>(Coming{*std::move(opened.value()), {}, {}}));
                   }
               });
}

/// All of the file is sound; now whether its visit is here.
void VisitFileModel::look(const std::shared_ptr<Coming>& coming) {
    open_.keeping().post(
        this, [coming](Store& store) { return standing_here(store, coming->file.survey()); },
        [this, coming](const Result<Standing>& standing) {
            if (!standing) {
                end(fault_of(standing));
                return;
            }
            coming->standing = *standing;
            keepPhotos(coming, 0);
        });
}

/// One photo after the other, so that edits go between; the visit comes last, and until then nothing mentions them.
void VisitFileModel::keepPhotos(const std::shared_ptr<Coming>& coming, std::size_t next) {
    const auto& photos = coming->file.photos();
    if (aside_.stopped()) {
        end(tr("Stopped. Nothing was taken in."));
        return;
    }
    if (next == photos.size()) {
        keepVisit(coming);
        return;
    }
    percent_ = 50 + static_cast<int>(50 * next / photos.size());
    emit progressed();
    aside_.run([coming, next](const LongWork&) { return coming->file.bytes_of(coming->file.photos()[next]); },
               [this, coming, next](const Result<std::string>& photo) {
                   if (!photo) {
                       end(fault_of(photo));
                       return;
                   }
                   open_.keeping().post(
                       this,
                       [bytes = *photo, type = coming->file.photos()[next].media_type](Store& store) {
                           return store.keep_photo(bytes, type);
                       },
                       [this, coming, next](const Result<std::string>& kept) {
                           if (!kept) {
                               end(fault_of(kept));
                           } else {
                               keepPhotos(coming, next + 1);
                           }
                       });
               });
}

void VisitFileModel::keepVisit(const std::shared_ptr<Coming>& coming) {
    Survey survey = coming->file.survey();
    const auto [here, removed] = coming->standing;
    if (here == Here::otherwise || here == Here::damaged) {
        survey.id = open_.newId();
        survey.parents.reset();
        survey.title = bytes(survey.title.empty() ? tr("From a file") : tr("%1, from a file").arg(shown(survey.title)));
    }
    coming->kept_as = shown(survey.id);
    const auto done = [this, coming](const Result<Done>& kept) {
        if (!kept) {
            end(fault_of(kept));
        } else {
            endTakenIn(*coming);
        }
    };
    if (here == Here::as_it_is) {
        open_.keeping().post(
            this,
            [id = survey.id, bring = removed](Store& store) {
                return bring ? store.bring_back(id) : Result<Done>(Done{});
            },
            done);
        return;
    }
    open_.keeping().post(
        this,
        [survey, says = bytes(tr("Taken in from a file")), same = here == Here::no,
         document = coming->file.document()](Store& store) -> Result<Done> {
            if (const auto anew = same ? store.ask_questions_anew() : Result<Done>(Done{}); !anew) {
                return anew.error();
            }
            const auto kept = store.keep(survey, says);
            if (!kept) {
                return kept.error();
            }
            return same ? store.add_parent(survey.id, document) : Result<Done>(Done{});
        },
        done);
}

void VisitFileModel::endTakenIn(const Coming& coming) {
    const QString title = coming.file.survey().title.empty() ? tr("A visit") : shown(coming.file.survey().title);
    taken_in_ = coming.kept_as;
    emit tookIn(taken_in_);
    switch (coming.standing.here) {
        case Here::as_it_is:
            end((coming.standing.removed ? tr("%1 was among the removed visits, just as in the file; it is back.")
                                         : tr("%1 is here already, just as in the file."))
                    .arg(title));
            break;
        case Here::otherwise:
            end(with_missing(tr("%1 is here in another state. What the file holds was put beside it, as a visit of its "
                                "own whose title ends in “from a file”.")
                                 .arg(title),
                             coming.file.missing()));
            break;
        case Here::damaged:
            end(with_missing(tr("%1 can’t be read here. What the file holds was put beside it, as a visit of its own "
                                "whose title ends in “from a file”.")
                                 .arg(title),
                             coming.file.missing()));
            break;
        case Here::no:
            end(with_missing(tr("%1 was taken in.").arg(title), coming.file.missing()));
            break;
    }
}

}  // namespace truehang
