// SPDX-License-Identifier: Apache-2.0
#include "shown_rows.h"

#include <utility>

namespace truehang {

ShownRows::ShownRows(QList<QByteArray> roles, QObject* parent) : QAbstractListModel(parent), roles_(std::move(roles)) {}

int ShownRows::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant ShownRows::data(const QModelIndex& index, int role) const {
    const int column = role == Qt::DisplayRole ? 0 : role - Qt::UserRole;
    if (!index.isValid() || index.row() >= rows_.size() || column < 0 || column >= roles_.size()) {
        return {};
    }
    return rows_.at(index.row()).value(column);
}

QHash<int, QByteArray> ShownRows::roleNames() const {
    QHash<int, QByteArray> names;
    for (int column = 0; column < roles_.size(); ++column) {
        names.insert(Qt::UserRole + column, roles_.at(column));
    }
    return names;
}

QVariant ShownRows::value(int index, const QString& role) const {
    const int column = roleOf(role.toUtf8());
    return index < 0 || index >= count() || column < 0 ? QVariant() : data(this->index(index), Qt::UserRole + column);
}

int ShownRows::indexOf(const QVariant& key) const {
    for (int row = 0; row < count(); ++row) {
        if (data(index(row), Qt::UserRole) == key) {
            return row;
        }
    }
    return -1;
}

int ShownRows::indexFrom(int first, const QVariant& key) const {
    for (int row = first; row < rows_.size(); ++row) {
        if (rows_.at(row).value(0) == key) {
            return row;
        }
    }
    return -1;
}

void ShownRows::setRows(const QList<Row>& rows) {
    const auto before = rows_.size();
    // What is gone, from the end; then each place in turn gets its row, moved there or new.
    for (auto row = static_cast<int>(rows_.size()) - 1; row >= 0; --row) {
        const QVariant key = rows_.at(row).value(0);
        const bool stays = std::any_of(rows.begin(), rows.end(), [&](const Row& r) { return r.value(0) == key; });
        if (!stays) {
            beginRemoveRows({}, row, row);
            rows_.removeAt(row);
            endRemoveRows();
        }
    }
    for (int row = 0; row < rows.size(); ++row) {
        const int stands = indexFrom(row, rows.at(row).value(0));
        if (stands < 0) {
            beginInsertRows({}, row, row);
            rows_.insert(row, rows.at(row));
            endInsertRows();
        } else if (stands > row) {
            beginMoveRows({}, stands, stands, {}, row);
            rows_.move(stands, row);
            endMoveRows();
        }
    }
    while (rows_.size() > rows.size()) {  // a key that stood there twice
        beginRemoveRows({}, static_cast<int>(rows_.size()) - 1, static_cast<int>(rows_.size()) - 1);
        rows_.removeLast();
        endRemoveRows();
    }
    changeInPlace(rows);
    if (before != rows_.size()) {
        emit countChanged();
    }
}

void ShownRows::changeInPlace(const QList<Row>& rows) {
    for (int row = 0; row < rows.size(); ++row) {
        QList<int> changed;
        for (int column = 0; column < roles_.size(); ++column) {
            if (rows_.at(row).value(column) != rows.at(row).value(column)) {
                changed.append(Qt::UserRole + column);
            }
        }
        if (!changed.isEmpty()) {
            rows_[row] = rows.at(row);
            emit dataChanged(index(row), index(row), changed);
        }
    }
}

void ShownRows::setValue(int row, const QByteArray& role, const QVariant& value, bool silent) {
    const int column = roleOf(role);
    if (row < 0 || row >= rows_.size() || column < 0 || rows_.at(row).value(column) == value) {
        return;
    }
    rows_[row][column] = value;
    if (!silent) {
        emit dataChanged(index(row), index(row), {Qt::UserRole + column});
    }
}

int ShownRows::roleOf(const QByteArray& name) const { return static_cast<int>(roles_.indexOf(name)); }

}  // namespace truehang
