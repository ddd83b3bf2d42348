// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/own_certificate.h"

#include "protocol/digest.h"
#include "workroom/archive/disk.h"

#include <fcntl.h>
#include <openssl/bio.h>
#include <openssl/evp.h>
#include <openssl/pem.h>
#include <openssl/rand.h>
#include <openssl/x509.h>
#include <openssl/x509v3.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <memory>

namespace truehang::workroom {

namespace {

constexpr const char* file_name = "own-certificate.pem";
constexpr std::chrono::days clocks_differ{1};

struct Free {
    void operator()(EVP_PKEY* key) const { EVP_PKEY_free(key); }
    void operator()(X509* certificate) const { X509_free(certificate); }
    void operator()(X509_EXTENSION* extension) const { X509_EXTENSION_free(extension); }
    void operator()(BIO* bio) const { BIO_free(bio); }
};
using Key = std::unique_ptr<EVP_PKEY, Free>;
using Certificate = std::unique_ptr<X509, Free>;
using Extension = std::unique_ptr<X509_EXTENSION, Free>;
using Bio = std::unique_ptr<BIO, Free>;

/// As the library reads subject alternative names: "DNS:workroom,IP:192.0.2.7". Letters that could end a name are in
/// none that is taken.
std::string alternative_names(const std::vector<std::string>& names) {
    std::string listed = "DNS:localhost,IP:127.0.0.1,IP:::1";
    for (const auto& name : names) {
        const std::unique_ptr<ASN1_OCTET_STRING, decltype(&ASN1_OCTET_STRING_free)> ip(a2i_IPADDRESS(name.c_str()),
                                                                                       ASN1_OCTET_STRING_free);
        const bool plain = std::all_of(name.begin(), name.end(), [](char c) {
            return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '.';
        });
        if (ip || (plain && !name.empty() && name.size() <= 253)) {
            listed += (ip ? ",IP:" : ",DNS:") + name;
        }
    }
    return listed;
}

bool add_extension(X509& certificate, int kind, const std::string& value) {
    X509V3_CTX context;
    X509V3_set_ctx_nodb(&context);
    X509V3_set_ctx(&context, &certificate, &certificate, nullptr, nullptr, 0);
    const Extension extension(X509V3_EXT_conf_nid(nullptr, &context, kind, value.c_str()));
    return extension && X509_add_ext(&certificate, extension.get(), -1) == 1;
}

bool set_times(X509& certificate, sync::Time now) {
    const auto seconds = std::chrono::floor<std::chrono::seconds>(now).time_since_epoch();
    return ASN1_TIME_set(X509_getm_notBefore(&certificate), (seconds - clocks_differ).count()) != nullptr &&
           ASN1_TIME_set(X509_getm_notAfter(&certificate), (seconds + own_certificate_life).count()) != nullptr;
}

bool set_names(X509& certificate) {
    auto* subject = X509_get_subject_name(&certificate);
    const std::string_view name = "Truehang workroom";
    return X509_NAME_add_entry_by_txt(subject, "CN", MBSTRING_UTF8, reinterpret_cast<const unsigned char*>(name.data()),
                                      static_cast<int>(name.size()), -1, 0) == 1 &&
           X509_set_issuer_name(&certificate, subject) == 1;
}

/// Null where the library fails.
Certificate self_signed(EVP_PKEY& key, const std::vector<std::string>& names, sync::Time now) {
    Certificate certificate(X509_new());
    std::uint64_t serial = 0;
    if (!certificate || RAND_bytes(reinterpret_cast<unsigned char*>(&serial), sizeof serial) != 1) {
        return nullptr;
    }
    const bool made = X509_set_version(certificate.get(), X509_VERSION_3) == 1 &&
                      ASN1_INTEGER_set_uint64(X509_get_serialNumber(certificate.get()), (serial >> 1U) | 1U) == 1 &&
                      set_times(*certificate, now) && set_names(*certificate) &&
                      X509_set_pubkey(certificate.get(), &key) == 1 &&
                      add_extension(*certificate, NID_basic_constraints, "critical,CA:FALSE") &&
                      add_extension(*certificate, NID_key_usage, "critical,digitalSignature") &&
                      add_extension(*certificate, NID_ext_key_usage, "serverAuth") &&
                      add_extension(*certificate, NID_subject_alt_name, alternative_names(names)) &&
                      X509_sign(certificate.get(), &key, EVP_sha256()) > 0;
    return made ? std::move(certificate) : nullptr;
}

/// Writes a file that only its owner reads, whole or not at all.
bool write_private(const std::filesystem::path& file, std::string_view text) {
    auto waiting = file;
    waiting += ".new";
    ::unlink(waiting.c_str());
    const int descriptor = ::open(waiting.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    if (descriptor < 0) {
        return false;
    }
    const bool written =
        ::write(descriptor, text.data(), text.size()) == static_cast<ssize_t>(text.size()) && ::fsync(descriptor) == 0;
    const int fault = errno;
    ::close(descriptor);
    errno = fault;
    return written && ::rename(waiting.c_str(), file.c_str()) == 0 && sync_folder(file.parent_path());
}

std::string fingerprint_of(const X509& certificate) {
    sync::Sha256 digest{};
    unsigned int size = 0;
    return X509_digest(&certificate, EVP_sha256(), digest.data(), &size) == 1 ? sync::hex(digest) : std::string();
}

Result<OwnCertificate> make(const std::filesystem::path& file, const std::vector<std::string>& names, sync::Time now) {
    const Key key(EVP_EC_gen("P-256"));
    const auto certificate = key ? self_signed(*key, names, now) : nullptr;
    const Bio text(BIO_new(BIO_s_mem()));
    if (!certificate || !text ||
        PEM_write_bio_PKCS8PrivateKey(text.get(), key.get(), nullptr, nullptr, 0, nullptr, nullptr) != 1 ||
        PEM_write_bio_X509(text.get(), certificate.get()) != 1) {
        return Error{ErrorCode::io, file.string(), "A certificate couldn’t be made."};
    }
    char* bytes = nullptr;
    const auto size = BIO_get_mem_data(text.get(), &bytes);
    const bool written = write_private(file, {bytes, static_cast<std::size_t>(size)});
    OPENSSL_cleanse(bytes, static_cast<std::size_t>(size));
    if (!written) {
        return system_error(file);
    }
    return OwnCertificate{file, fingerprint_of(*certificate)};
}

}  // namespace

Result<OwnCertificate> own_certificate(const std::filesystem::path& folder, const std::vector<std::string>& names,
                                       sync::Time now) {
    const auto file = folder / file_name;
    if (!std::filesystem::exists(file)) {
        return make(file, names, now);
    }
    std::error_code ignored;  // a copy that was brought back may have lost who may read it
    std::filesystem::permissions(file, std::filesystem::perms::owner_read | std::filesystem::perms::owner_write,
                                 ignored);
    const Bio text(BIO_new_file(file.c_str(), "r"));
    const Certificate certificate(text ? PEM_read_bio_X509(text.get(), nullptr, nullptr, nullptr) : nullptr);
    if (!certificate) {
        return Error{ErrorCode::damaged, file.string(),
                     "The workroom’s own certificate can’t be read. Bring back a copy: paired phones trust no other. "
                     "Without one, remove the file, and pair the phones anew with the certificate made then."};
    }
    return OwnCertificate{file, fingerprint_of(*certificate)};
}

}  // namespace truehang::workroom
