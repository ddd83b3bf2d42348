// SPDX-License-Identifier: Apache-2.0
#include "adjust/photo_check.h"

#include "adjust/chi_square.h"
#include "units/saying.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr Eigen::Index corner_unknowns = 5;
/// The corners, then the bow between the sides and the one between bottom and head.
constexpr Eigen::Index compared_unknowns = corner_unknowns + 2;

using Symmetric = Eigen::MatrixXd;

/// What `out_of_square_u` says of the corners, as information.
Symmetric squareness_information() {
    Eigen::Matrix<double, 3, corner_unknowns> leans;
    leans << 0, 0, 0, 1, 0,  //
        -1, 1, 0, 0, 0,      //
        0, 0, 1, 0, -1;
    return leans.transpose() * leans / (out_of_square_u * out_of_square_u);
}

/// Photos as normal equations of the corners and of each size’s cut.
class PhotoSum {
public:
    explicit PhotoSum(const std::vector<PhotoShape>& shapes) {
        for (const PhotoShape& shape : shapes) {
            for (const SheetSize& size : shape.sizes) {
                if (place_of(size) == sizes_.size()) {
                    sizes_.push_back(size);
                }
            }
        }
        const Eigen::Index n = corner_unknowns + 2 * static_cast<Eigen::Index>(sizes_.size());
        information_ = Symmetric::Zero(n, n);
        side_ = Eigen::VectorXd::Zero(n);
        degrees_ = -static_cast<int>(n);
        std::ranges::for_each(shapes, [this](const PhotoShape& shape) { add(shape); });
    }

    /// By how much the photos contradict each other; nothing where the equations can’t be solved.
    std::optional<double> solve(PhotosTogether& together) {
        const Eigen::LDLT<Symmetric> factors(information_);
        if (factors.info() != Eigen::Success || !factors.isPositive()) {
            return std::nullopt;
        }
        const Eigen::VectorXd solution = factors.solve(side_);
        const Symmetric covariance = factors.solve(Symmetric::Identity(information_.rows(), information_.cols()));
        std::copy_n(solution.data(), together.opening.size(), together.opening.begin());
        for (Eigen::Index i = 0; i < corner_unknowns; ++i) {
            for (Eigen::Index j = 0; j < corner_unknowns; ++j) {
                together.covariance.push_back(covariance(i, j));
            }
        }
        return squares_ - solution.dot(side_);
    }
    [[nodiscard]] int degrees() const { return degrees_; }

private:
    [[nodiscard]] std::size_t place_of(const SheetSize& size) const {
        const auto found = std::ranges::find_if(
            sizes_, [&](const SheetSize& each) { return each.width == size.width && each.height == size.height; });
        return static_cast<std::size_t>(found - sizes_.begin());
    }
    /// What was allowed for is said once, whatever the number of photos.
    void add(const PhotoShape& shape) {
        const auto n = static_cast<Eigen::Index>(shape.opening.size() + shape.cut.size());
        const Eigen::Map<const Symmetric> covariance(shape.covariance.data(), n, n);
        const Symmetric own = covariance.ldlt().solve(Symmetric::Identity(n, n));
        Eigen::VectorXd point(n);
        std::ranges::copy(shape.opening, point.data());
        std::ranges::copy(shape.cut, point.data() + shape.opening.size());
        std::vector<Eigen::Index> place{0, 1, 2, 3, 4};
        for (const SheetSize& size : shape.sizes) {
            const auto at = corner_unknowns + 2 * static_cast<Eigen::Index>(place_of(size));
            place.insert(place.end(), {at, at + 1});
            const bool is_again = information_(at, at) > 0.0;
            for (const auto& [index, mm] : {std::pair(at, size.width), std::pair(at + 1, size.height)}) {
                const double u = sheet_side_u(mm);
                information_(index, index) -= is_again ? 1.0 / (u * u) : 0.0;
                degrees_ -= is_again ? 1 : 0;
            }
        }
        if (is_begun_) {
            information_.topLeftCorner<corner_unknowns, corner_unknowns>() -= squareness_information();
            degrees_ -= 3;
        }
        is_begun_ = true;
        degrees_ += static_cast<int>(n);
        const Eigen::VectorXd weighted = own * point;
        squares_ += point.dot(weighted);
        for (Eigen::Index i = 0; i < n; ++i) {
            side_(place[static_cast<std::size_t>(i)]) += weighted(i);
            for (Eigen::Index j = 0; j < n; ++j) {
                information_(place[static_cast<std::size_t>(i)], place[static_cast<std::size_t>(j)]) += own(i, j);
            }
        }
    }

    std::vector<SheetSize> sizes_;
    Symmetric information_;
    Eigen::VectorXd side_;
    double squares_ = 0.0;
    int degrees_ = 0;
    bool is_begun_ = false;
};

/// The tape's readings against the photos'. With A the weighted derivatives of the readings by what the photos know, C
/// their covariance and U a basis of what A reaches, the difference weighs U (1 + U'A C A'U)^-1 U': the joint
/// adjustment of both, less the tape's own.
struct PhotoSolve {
    std::vector<double> by_photo;  ///< mm, by observation
    Eigen::MatrixXd by;            ///< their derivatives by the corners and bows
    Symmetric covariance;          ///< of corners and bows
    Eigen::Index rank = 0;

    [[nodiscard]] Residuals judged(const std::vector<Observation>& observations) const {
        const auto n = static_cast<Eigen::Index>(observations.size());
        Eigen::VectorXd sigma(n);
        Eigen::VectorXd off(n);
        for (Eigen::Index i = 0; i < n; ++i) {
            const auto& observation = observations[static_cast<std::size_t>(i)];
            sigma(i) = observation.sigma;
            off(i) = (observation.value - by_photo[static_cast<std::size_t>(i)]) / observation.sigma;
        }
        const Eigen::MatrixXd weighted = sigma.cwiseInverse().asDiagonal() * by;
        const Eigen::JacobiSVD<Eigen::MatrixXd> svd(weighted, Eigen::ComputeThinU);
        const Eigen::MatrixXd reached = svd.matrixU().leftCols(rank);
        const Eigen::MatrixXd moved = reached.transpose() * weighted;
        const Symmetric inner = Symmetric::Identity(rank, rank) + moved * covariance * moved.transpose();
        const Symmetric weight = reached * inner.llt().solve(reached.transpose());
        const Eigen::VectorXd residual = -(weight * off);
        Residuals result;
        result.chi2 = -off.dot(residual);
        result.redundancy = static_cast<int>(rank);
        const Symmetric hat = Symmetric::Identity(n, n) - weight;
        result.hat.assign(hat.data(), hat.data() + hat.size());
        for (Eigen::Index i = 0; i < n; ++i) {
            constexpr double none = 1e-12;
            const double r = weight(i, i);
            result.residuals.push_back(residual(i) * sigma(i));
            result.redundancy_numbers.push_back(r < none ? 0.0 : r);
            result.normalised.push_back(r < none ? 0.0 : residual(i) / std::sqrt(r));
        }
        return result;
    }
    std::optional<Residuals> operator()(const std::vector<Observation>& observations, double /*hopeless*/) const {
        return judged(observations);
    }
};

}  // namespace

std::vector<PhotoSize> PhotosTogether::sizes() const {
    std::vector<PhotoSize> sizes;
    for (const OpeningSize& size : opening_sizes(opening)) {
        const Eigen::Map<const Eigen::Matrix<double, corner_unknowns, 1>> by(size.by.data());
        const Eigen::Map<const Eigen::Matrix<double, corner_unknowns, corner_unknowns>> own(covariance.data());
        sizes.push_back({std::string(size.station), Length::mm(size.mm), Length::mm(std::sqrt(by.dot(own * by)))});
    }
    return sizes;
}

Result<PhotosTogether> photos_together(const std::vector<PhotoShape>& shapes) {
    if (shapes.empty()) {
        return Error{ErrorCode::missing, "photos", say("No photo of this window can be measured by yet.")};
    }
    PhotoSum sum(shapes);
    PhotosTogether together;
    together.photos = shapes.size();
    const auto chi2 = sum.solve(together);
    const bool contradict = !chi2 || (sum.degrees() > 0 && *chi2 >= chi_square_limit(sum.degrees()));
    if (contradict) {
        return Error{ErrorCode::conflict, "photos",
                     say("The photos contradict each other. Tap the corners of one of them again, or take it off as a "
                         "tape.")};
    }
    return together;
}

bool has_four_corners(Shape shape) { return shape == Shape::recess || shape == Shape::frame || shape == Shape::door; }

std::optional<PhotosTogether> opening_by_photos(const Window& window, Shape shape) {
    if (!has_four_corners(shape)) {
        return std::nullopt;
    }
    std::vector<PhotoShape> shapes;
    std::size_t tried = 0;
    for (const Photo& photo : window.photos) {
        if (!photo.plane || ++tried > most_photos_worked) {
            continue;
        }
        if (auto worked = photo_shape(*photo.plane)) {
            shapes.push_back(std::move(worked).value());
        }
    }
    if (shapes.empty()) {
        return std::nullopt;
    }
    auto together = photos_together(shapes);
    return together ? std::optional(std::move(together).value()) : std::nullopt;
}

std::optional<Network> photo_network(const PhotosTogether& photos, const std::vector<CountedReading>& readings,
                                     const TapeRule& tape) {
    PhotoSolve solve;
    std::vector<Observation> observations;
    solve.by = Eigen::MatrixXd::Zero(8, compared_unknowns);
    const auto sizes = opening_sizes(photos.opening);
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        const CountedReading* reading = find_counted(readings, sizes[i].station);
        if (reading == nullptr || !reading->measured || reading->value.mm() < 1.0) {
            continue;
        }
        const auto row = static_cast<Eigen::Index>(observations.size());
        observations.push_back(observation_of(*reading, tape));
        solve.by_photo.push_back(sizes[i].mm);
        std::ranges::copy(sizes[i].by, solve.by.row(row).begin());
        if (i >= sizes_between_corners) {
            solve.by(row, corner_unknowns + static_cast<Eigen::Index>(i - sizes_between_corners)) = 1.0;
        }
    }
    if (observations.empty()) {
        return std::nullopt;
    }
    solve.by.conservativeResize(static_cast<Eigen::Index>(observations.size()), Eigen::NoChange);
    solve.covariance = Symmetric::Identity(compared_unknowns, compared_unknowns) * (bow_u * bow_u);
    solve.covariance.topLeftCorner<corner_unknowns, corner_unknowns>() =
        Eigen::Map<const Eigen::Matrix<double, corner_unknowns, corner_unknowns>>(photos.covariance.data());
    solve.rank = Eigen::FullPivHouseholderQR<Eigen::MatrixXd>(solve.by).setThreshold(1e-9).rank();
    Adjustment adjustment;
    static_cast<Residuals&>(adjustment) = solve.judged(observations);
    return network_of(std::string(photo_network_name), std::move(observations), std::move(adjustment),
                      std::move(solve));
}

}  // namespace truehang
