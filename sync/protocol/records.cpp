// SPDX-License-Identifier: Apache-2.0
#include "protocol/records.h"

#include "protocol/digest.h"
#include "protocol/limits.h"

#include <nlohmann/json.hpp>

#include <optional>

namespace truehang::sync {

namespace {

using Json = nlohmann::ordered_json;

std::string text_of(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

/// Reads the keys of one object and keeps the first fault.
class ObjectReader {
public:
    explicit ObjectReader(const Json& json, std::string at = {}) : json_(json), at_(std::move(at)) {
        if (!json_.is_object()) {
            fail("", "an object is expected");
        }
    }
    std::string text(const char* key, std::size_t most = 4096) {
        const Json* value = find(key);
        if (value == nullptr || !value->is_string() || value->get_ref<const std::string&>().size() > most) {
            fail(key, "a text is expected");
            return {};
        }
        return value->get<std::string>();
    }
    std::string digest(const char* key) {
        auto value = text(key);
        if (!sha256_from_hex(value)) {
            fail(key, "64 hexadecimal digits are expected");
        }
        return value;
    }
    long long whole(const char* key, long long least) {
        const Json* value = find(key);
        const bool fits = value != nullptr && value->is_number_integer() &&
                          (!value->is_number_unsigned() ||
                           value->get<unsigned long long>() <= static_cast<unsigned long long>(revision_limit));
        if (!fits || value->get<long long>() < least) {
            fail(key, "a whole number is expected");
            return least;
        }
        return value->get<long long>();
    }
    const Json& list(const char* key) {
        static const Json none = Json::array();
        const Json* value = find(key);
        if (value == nullptr || !value->is_array()) {
            fail(key, "a list is expected");
            return none;
        }
        return *value;
    }
    void keep(const std::optional<Error>& fault) {
        if (!fault_) {
            fault_ = fault;
        }
    }
    [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

private:
    const Json* find(const char* key) const {
        const auto found = json_.is_object() ? json_.find(key) : json_.end();
        return found == json_.end() ? nullptr : &*found;
    }
    void fail(const std::string& key, const std::string& text) {
        const auto pointer = key.empty() ? at_ : at_ + "/" + key;
        keep(Error{ErrorCode::unreadable, pointer, "Not the record that is expected here: " + text + "."});
    }
    const Json& json_;
    std::string at_;
    std::optional<Error> fault_;
};

Json parse(std::string_view text) { return Json::parse(text, nullptr, false); }

template <class Record>
Result<Record> result_of(const ObjectReader& reader, Record record) {
    if (reader.fault()) {
        return *reader.fault();
    }
    return record;
}

Json json_of(const SurveyReceipt& record) {
    return Json{{"id", record.id},
                {"revision", record.revision},
                {"sha256", record.sha256},
                {"received_at", record.received_at}};
}

Json json_of(const std::vector<SurveyReceipt>& receipts) {
    Json list = Json::array();
    for (const auto& receipt : receipts) {
        list.push_back(json_of(receipt));
    }
    return list;
}

Result<SurveyReceipt> survey_receipt(const Json& json, const std::string& at) {
    ObjectReader reader(json, at);
    SurveyReceipt record;
    record.id = reader.text("id");
    record.revision = reader.whole("revision", 1);
    record.sha256 = reader.digest("sha256");
    record.received_at = reader.text("received_at");
    return result_of(reader, record);
}

}  // namespace

std::string write_record(const PairRequest& record) {
    return text_of(Json{{"code", record.code}, {"device_name", record.device_name}});
}
std::string write_record(const PairAnswer& record) {
    return text_of(Json{{"token", record.token}, {"workroom", record.workroom}});
}
std::string write_record(const SurveyReceipt& record) { return text_of(json_of(record)); }
std::string write_record(const PhotoReceipt& record) {
    return text_of(Json{{"sha256", record.sha256}, {"bytes", record.bytes}, {"received_at", record.received_at}});
}
std::string write_record(const SurveyThere& record) {
    return text_of(
        Json{{"id", record.id}, {"revisions", json_of(record.revisions)}, {"photos_missing", record.photos_missing}});
}
std::string write_record(const Changes& record) {
    Json changes = Json::array();
    for (const auto& [receipt, erased_at, sent_by] : record.changes) {
        changes.push_back(erased_at.empty() ? json_of(receipt) : Json{{"id", receipt.id}, {"erased_at", erased_at}});
        if (erased_at.empty() && !sent_by.empty()) {
            changes.back()["sent_by"] = sent_by;
        }
    }
    return text_of(Json{{"changes", changes}, {"next", record.next}, {"more", record.more}});
}

Result<PairRequest> read_pair_request(std::string_view json) {
    const Json parsed = parse(json);
    ObjectReader reader(parsed);
    PairRequest record;
    record.code = reader.text("code", 100);
    record.device_name = reader.text("device_name", 100);
    return result_of(reader, record);
}

Result<PairAnswer> read_pair_answer(std::string_view json) {
    const Json parsed = parse(json);
    ObjectReader reader(parsed);
    PairAnswer record;
    record.token = reader.text("token");
    record.workroom = reader.text("workroom");
    return result_of(reader, record);
}

Result<SurveyReceipt> read_survey_receipt(std::string_view json) { return survey_receipt(parse(json), ""); }

Result<PhotoReceipt> read_photo_receipt(std::string_view json) {
    const Json parsed = parse(json);
    ObjectReader reader(parsed);
    PhotoReceipt record;
    record.sha256 = reader.digest("sha256");
    record.bytes = reader.whole("bytes", 0);
    record.received_at = reader.text("received_at");
    return result_of(reader, record);
}

Result<SurveyThere> read_survey_there(std::string_view json) {
    const Json parsed = parse(json);
    ObjectReader reader(parsed);
    SurveyThere record;
    record.id = reader.text("id");
    for (const auto& entry : reader.list("revisions")) {
        const auto receipt = survey_receipt(entry, "/revisions/" + std::to_string(record.revisions.size()));
        if (!receipt) {
            reader.keep(receipt.error());
            break;
        }
        record.revisions.push_back(*receipt);
    }
    for (const auto& entry : reader.list("photos_missing")) {
        if (entry.is_string()) {
            record.photos_missing.push_back(entry.get<std::string>());
        }
    }
    return result_of(reader, record);
}

Result<Changes> read_changes(std::string_view json) {
    const Json parsed = parse(json);
    ObjectReader reader(parsed);
    Changes record;
    for (const auto& entry : reader.list("changes")) {
        const std::string at = "/changes/" + std::to_string(record.changes.size());
        ObjectReader one(entry, at);
        if (entry.is_object() && entry.contains("erased_at")) {
            record.changes.push_back({{one.text("id"), 0, {}, {}}, one.text("erased_at"), {}});
            reader.keep(one.fault());
            continue;
        }
        const auto receipt = survey_receipt(entry, at);
        if (!receipt) {
            reader.keep(receipt.error());
            break;
        }
        record.changes.push_back({*receipt, {}, entry.contains("sent_by") ? one.text("sent_by") : std::string()});
    }
    record.next = reader.text("next");
    const auto more = parsed.is_object() ? parsed.find("more") : parsed.end();
    record.more = parsed.is_object() && more != parsed.end() && more->is_boolean() && more->get<bool>();
    return result_of(reader, record);
}

}  // namespace truehang::sync
