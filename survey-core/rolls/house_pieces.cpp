// SPDX-License-Identifier: Apache-2.0
#include "cloth/plan.h"
#include "figures/window_working.h"
#include "rolls/house_plan.h"
#include "units/rounding.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang {

namespace {

/// The pieces of one kind that one layer has cut, one by one.
class Expanding {
public:
    Expanding(const Room& room, const Window& window, const Fabric& fabric, std::vector<PieceToCut>& pieces)
        : room_(room), window_(window), fabric_(fabric), pieces_(pieces) {}

    void add(const std::string& layer, const Piece& cut, int number, int curtains) {
        const bool lies_in_runs = cut.what == "drops" || cut.what == "pelmet";
        // Where the widths don't divide between the curtains one width is split, and both lie together.
        const bool divides = cut.what == "drops" && curtains > 0 && cut.count % curtains == 0;
        const int each = divides ? cut.count / curtains : cut.count;
        for (int i = 0; i < cut.count; ++i) {
            PieceToCut piece;
            piece.window = window_.id;
            piece.room = room_.id;
            piece.layer = layer;
            piece.what = cut.what;
            piece.id = fmt::format("{}/{}/{}.{}/{}", window_.id, layer, cut.what, number + 1, i + 1);
            piece.length = cut.matched ? cut.least : cut.length;
            piece.curtain = divides ? i / each + 1 : 0;
            piece.matched = cut.matched;
            const bool second = cut.matched && match_of(fabric_) == Match::half_drop && i % each % 2 == 1;
            piece.phase = second ? fabric_.repeat / 2.0 : Length();
            if (lies_in_runs) {
                piece.run = fmt::format("{}.{} {}", layer, number + 1, piece.curtain);
                piece.run += second && cut_by_phase(cut) ? " second phase" : "";
            }
            pieces_.push_back(std::move(piece));
        }
    }

private:
    /// All of one phase, then all of the other; else the phases come in turn.
    [[nodiscard]] bool cut_by_phase(const Piece& cut) const {
        const double repeats = cut.total / fabric_.repeat / cut.count;
        return snapped(repeats) == std::round(repeats);
    }

    const Room& room_;
    const Window& window_;
    const Fabric& fabric_;
    std::vector<PieceToCut>& pieces_;
};

void add_window(const Survey& survey, const Room& room, const Window& window, HousePieces& pieces) {
    const WorkedWindow worked = work_window(survey, room, window);
    for (std::size_t l = 0; l < worked.pieces.size(); ++l) {
        const auto& finished = worked.figures.layers[l].finished;
        const LayerPieces& layer = worked.pieces[l];
        for (std::size_t i = 0; i < layer.pieces.size(); ++i) {
            const Piece& piece = layer.pieces[i];
            const auto of = std::ranges::find(survey.fabrics, piece.fabric, &Fabric::id);
            // The half repeat of an order is a gap of the plan, not a piece.
            if (of != survey.fabrics.end() && piece.what != "half repeat") {
                Expanding(room, window, *of, pieces[of->id])
                    .add(layer.layer, piece, static_cast<int>(i), finished ? finished->curtains : 0);
            }
        }
    }
}

}  // namespace

std::vector<PieceToCut> pieces_of(const Survey& survey, const std::string& fabric,
                                  const std::set<std::string>& without) {
    return house_pieces(survey, without)[fabric];
}

HousePieces house_pieces(const Survey& survey, const std::set<std::string>& without) {
    HousePieces pieces;
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            if (!without.contains(window.id)) {
                add_window(survey, room, window, pieces);
            }
        }
    }
    return pieces;
}

std::vector<MetreMark> metre_marks(const Roll& roll) {
    std::vector<MetreMark> marks;
    const int metres = static_cast<int>(ceil_whole(roll.length.metres()));
    for (int metre = 1; metre <= metres; ++metre) {
        const Length from = Length::metres(metre - 1);
        MetreMark mark{metre, std::min(Length::metres(metre), roll.length), {}, {}};
        std::ranges::copy_if(roll.flaws, std::back_inserter(mark.flaws), [&](const RollFlaw& flaw) {
            return flaw.from < mark.at && (flaw.to > from || flaw.from >= from);
        });
        for (const RollJoin& join : roll.joins) {
            if (join.at >= from && join.at < mark.at) {
                mark.joins.push_back(join.at);
            }
        }
        marks.push_back(std::move(mark));
    }
    return marks;
}

}  // namespace truehang
