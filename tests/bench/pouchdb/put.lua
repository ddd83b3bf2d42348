-- SPDX-License-Identifier: Apache-2.0
-- For wrk: each request puts a document of its own. Arguments: where (a path with ID in it), the document’s file (with ID in
-- it), a file with an id and the document’s Content-Digest a line, then headers as NAME:VALUE.

local where, document, lines
local headers = { ["Content-Type"] = "application/json" }
local refused = false

function init(arguments)
    where = arguments[1]
    document = io.open(arguments[2]):read("*a")
    lines = io.lines(arguments[3])
    for i = 4, #arguments do
        local name, value = arguments[i]:match("^([^:]+):(.*)$")
        headers[name] = value
    end
end

function request()
    local id, digest = lines():match("^(%S+) (%S+)$")
    headers["Content-Digest"] = digest
    return wrk.format("PUT", where:gsub("ID", id), headers, (document:gsub("ID", id)))
end

function response(status)
    if status ~= 201 and not refused then
        refused = true
        io.stderr:write("answered " .. status .. "\n")
    end
end
