// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <QAbstractListModel>
#include <QByteArray>
#include <QList>
#include <QVariant>

namespace truehang {

/// Rows that a view model shows, with named roles. The first role is the row's key: rows whose key stays are changed in
/// place, others are inserted, moved or removed, so that a list keeps its place while its content is worked anew.
class ShownRows : public QAbstractListModel {
    Q_OBJECT
    Q_PROPERTY(int count READ count NOTIFY countChanged)

public:
    using Row = QVariantList;  ///< one value a role, in the roles' order

    explicit ShownRows(QList<QByteArray> roles, QObject* parent = nullptr);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;
    [[nodiscard]] int count() const { return rowCount({}); }

    /// The value of `role` in row `index`; nothing where either isn't there.
    Q_INVOKABLE [[nodiscard]] QVariant value(int index, const QString& role) const;
    /// The row with this key, or -1.
    Q_INVOKABLE [[nodiscard]] int indexOf(const QVariant& key) const;

    /// Fetches the rows that come next, where there are any: for a view that comes near the end.
    Q_INVOKABLE void fetchNext() {
        if (canFetchMore({})) {
            fetchMore({});
        }
    }

    void setRows(const QList<Row>& rows);
    /// Changes one value. `silent`: without telling the views, for text that the view itself has just typed.
    void setValue(int index, const QByteArray& role, const QVariant& value, bool silent = false);

signals:
    void countChanged();

protected:
    [[nodiscard]] int roleOf(const QByteArray& name) const;

private:
    [[nodiscard]] int indexFrom(int first, const QVariant& key) const;
    void changeInPlace(const QList<Row>& rows);

    QList<QByteArray> roles_;
    QList<Row> rows_;
};

}  // namespace truehang
