<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>PhotosPage</name>
    <message numerus="yes">
        <source>%n photo(s) coming in</source>
        <translation>
            <numerusform>%n photo coming in</numerusform>
            <numerusform>%n photos coming in</numerusform>
        </translation>
    </message>
</context>
</TS>
