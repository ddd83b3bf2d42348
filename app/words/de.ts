<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>BearingPanel</name>
    <message>
        <source>Which way it faces</source>
        <translation>Wohin es schaut</translation>
    </message>
    <message>
        <source>Done with this one</source>
        <translation>Damit fertig</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>the shadow lies on the mark now</source>
        <translation>der Schatten liegt jetzt auf dem Strich</translation>
    </message>
    <message>
        <source>The shadow lies on the mark now: take this time</source>
        <translation>Der Schatten liegt jetzt auf dem Strich: diese Zeit nehmen</translation>
    </message>
    <message>
        <source>take it out</source>
        <translation>herausnehmen</translation>
    </message>
    <message>
        <source>Take it out; undo brings it back</source>
        <translation>Herausnehmen; rückgängig holt es zurück</translation>
    </message>
</context>
<context>
    <name>BinPanel</name>
    <message>
        <source>Erase for good?</source>
        <translation>Endgültig löschen?</translation>
    </message>
    <message>
        <source>Keep them</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>empty the bin</source>
        <translation>Papierkorb leeren</translation>
    </message>
    <message>
        <source>erase for good</source>
        <translation>endgültig löschen</translation>
    </message>
</context>
<context>
    <name>CameraPanel</name>
    <message>
        <source>Take it</source>
        <translation>Aufnehmen</translation>
    </message>
    <message>
        <source>back</source>
        <translation>zurück</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
</context>
<context>
    <name>ChoiceBlocks</name>
    <message>
        <source>%1, %2: %3</source>
        <translation>%1, %2: %3</translation>
    </message>
</context>
<context>
    <name>ChoiceList</name>
    <message>
        <source>if none is chosen: %1</source>
        <translation>ohne Wahl gilt: %1</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
</context>
<context>
    <name>ChoiceTable</name>
    <message>
        <source>%1, %2: %3</source>
        <translation>%1, %2: %3</translation>
    </message>
</context>
<context>
    <name>ChoiceWords</name>
    <message>
        <source>leave it so</source>
        <translation>so lassen</translation>
    </message>
    <message>
        <source>cut it so</source>
        <translation>so zuschneiden</translation>
    </message>
    <message>
        <source>Decide the edge: leave it as it hangs now</source>
        <translation>Über die Kante entscheiden: hängen lassen wie jetzt</translation>
    </message>
    <message>
        <source>Decide the edge, cut it so: %1</source>
        <translation>Über die Kante entscheiden, so zuschneiden: %1</translation>
    </message>
    <message>
        <source>hang it so</source>
        <translation>so aufhängen</translation>
    </message>
    <message>
        <source>%1, hang it so: %2</source>
        <translation>%1, so aufhängen: %2</translation>
    </message>
    <message>
        <source>change</source>
        <translation>ändern</translation>
    </message>
    <message>
        <source>Change %1</source>
        <translation>%1 ändern</translation>
    </message>
    <message>
        <source>leave out</source>
        <translation>weglassen</translation>
    </message>
    <message>
        <source>Leave %1 out</source>
        <translation>%1 weglassen</translation>
    </message>
</context>
<context>
    <name>ChoicesPage</name>
    <message>
        <source>Compare another choice</source>
        <translation>Noch eine Möglichkeit vergleichen</translation>
    </message>
    <message>
        <source>Back to the figures</source>
        <translation>Zurück zu den Zahlen</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>Other ways to hang it</source>
        <translation>Andere Möglichkeiten</translation>
    </message>
    <message>
        <source>Nothing hangs here yet</source>
        <translation>Hier hängt noch nichts</translation>
    </message>
    <message>
        <source>Flags stand here where a choice brings a new one; the others stand with the figures.</source>
        <translation>Hier stehen nur Hinweise, die eine Möglichkeit neu bringt; die übrigen stehen bei den Zahlen.</translation>
    </message>
    <message>
        <source>Choice %1</source>
        <translation>Möglichkeit %1</translation>
    </message>
    <message>
        <source>See what it takes</source>
        <translation>Zeigen, was sie braucht</translation>
    </message>
    <message>
        <source>What you leave open stays as it hangs now.</source>
        <translation>Was Sie offen lassen, bleibt, wie es jetzt hängt.</translation>
    </message>
</context>
<context>
    <name>ClientPage</name>
    <message>
        <source>back to the figures</source>
        <translation>zurück zu den Zahlen</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>agree and sign</source>
        <translation>zustimmen und unterschreiben</translation>
    </message>
</context>
<context>
    <name>ClientTakes</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>DiffersPanel</name>
    <message>
        <source>later</source>
        <translation>später</translation>
    </message>
</context>
<context>
    <name>Elevation</name>
    <message>
        <source>Drawing of the window</source>
        <translation>Zeichnung des Fensters</translation>
    </message>
</context>
<context>
    <name>EndPanel</name>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>Photos of this window</source>
        <translation>Fotos dieses Fensters</translation>
    </message>
    <message>
        <source>What is in the way</source>
        <translation>Was im Weg ist</translation>
    </message>
    <message>
        <source>last station</source>
        <translation>letztes Maß</translation>
    </message>
    <message>
        <source>All stations of this window</source>
        <translation>Alle Maße dieses Fensters</translation>
    </message>
    <message>
        <source>visit</source>
        <translation>Besuch</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>That was the last station</source>
        <translation>Das war das letzte Maß</translation>
    </message>
    <message>
        <source>Not kept</source>
        <translation>Nicht gesichert</translation>
    </message>
    <message>
        <source>take a level line</source>
        <translation>Meterriss anlegen</translation>
    </message>
    <message>
        <source>what differs</source>
        <translation>was abweicht</translation>
    </message>
    <message>
        <source>The readings that don’t add up</source>
        <translation>Die Maße, die nicht zusammenpassen</translation>
    </message>
    <message>
        <source>not taken: %1</source>
        <translation>nicht genommen: %1</translation>
    </message>
    <message>
        <source>not measured</source>
        <translation>nicht gemessen</translation>
    </message>
    <message>
        <source>no tape has confirmed it yet</source>
        <translation>noch mit keinem Bandmaß bestätigt</translation>
    </message>
    <message>
        <source>doesn’t add up with the others</source>
        <translation>passt nicht zu den anderen</translation>
    </message>
    <message>
        <source>all stations</source>
        <translation>alle Maße</translation>
    </message>
</context>
<context>
    <name>FabricsPage</name>
    <message>
        <source>Cloths</source>
        <translation>Stoffe</translation>
    </message>
    <message>
        <source>Add a cloth</source>
        <translation>Stoff hinzufügen</translation>
    </message>
    <message>
        <source>No cloth yet. Width and repeat decide how much to buy.</source>
        <translation>Noch kein Stoff. Breite und Rapport bestimmen, wie viel zu kaufen ist.</translation>
    </message>
    <message>
        <source>Cloth without a name</source>
        <translation>Stoff ohne Namen</translation>
    </message>
    <message>
        <source>Cloth</source>
        <translation>Stoff</translation>
    </message>
    <message>
        <source>Back to the cloths</source>
        <translation>Zurück zu den Stoffen</translation>
    </message>
    <message>
        <source>take this cloth out</source>
        <translation>diesen Stoff entfernen</translation>
    </message>
    <message>
        <source>What is the cloth for?</source>
        <translation>Wofür ist der Stoff?</translation>
    </message>
    <message>
        <source>Face, what is seen</source>
        <translation>Oberstoff, was man sieht</translation>
    </message>
    <message>
        <source>Lining</source>
        <translation>Futter</translation>
    </message>
    <message>
        <source>Interlining</source>
        <translation>Zwischenfutter</translation>
    </message>
    <message>
        <source>Sheer</source>
        <translation>Store</translation>
    </message>
    <message>
        <source>your list</source>
        <translation>Ihre Liste</translation>
    </message>
    <message>
        <source>Take a cloth from your list</source>
        <translation>Stoff aus Ihrer Liste nehmen</translation>
    </message>
    <message>
        <source>keep in your list</source>
        <translation>in Ihre Liste</translation>
    </message>
    <message>
        <source>Keep this cloth in your list, for other visits</source>
        <translation>Diesen Stoff für andere Besuche in Ihre Liste aufnehmen</translation>
    </message>
</context>
<context>
    <name>FacingPanel</name>
    <message>
        <source>Which way it faces</source>
        <translation>Wohin es schaut</translation>
    </message>
    <message>
        <source>Keep this bearing</source>
        <translation>Diese Richtung behalten</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>Take it</source>
        <translation>Aufnehmen</translation>
    </message>
    <message>
        <source>By compass</source>
        <translation>Mit dem Kompass</translation>
    </message>
    <message>
        <source>Quick and rough. Iron near it turns it.</source>
        <translation>Schnell und grob. Eisen in der Nähe dreht ihn.</translation>
    </message>
    <message>
        <source>Hold the phone level, its upper edge straight out of the window, an arm’s length from radiator and lintel.</source>
        <translation>Halten Sie das Telefon waagerecht, die Oberkante gerade aus dem Fenster, eine Armlänge von Heizkörper und Sturz.</translation>
    </message>
    <message>
        <source>leave the compass</source>
        <translation>Kompass verlassen</translation>
    </message>
    <message>
        <source>By a shadow on the sill</source>
        <translation>Mit einem Schatten auf der Fensterbank</translation>
    </message>
    <message>
        <source>The best, while the sun shines in. Mark where an upright edge’s shadow lies, and tap here at that moment.</source>
        <translation>Am besten, solange die Sonne hereinscheint. Zeichnen Sie an, wo der Schatten einer senkrechten Kante liegt, und tippen Sie in diesem Augenblick hier.</translation>
    </message>
    <message>
        <source>Caution</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>Look at the shadow, never into the sun.</source>
        <translation>Schauen Sie auf den Schatten, nie in die Sonne.</translation>
    </message>
    <message>
        <source>Off a plan</source>
        <translation>Vom Lageplan</translation>
    </message>
    <message>
        <source>The line of the street, read off a map.</source>
        <translation>Der Verlauf der Straße, von einer Karte abgelesen.</translation>
    </message>
</context>
<context>
    <name>FigureList</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>FigureRow</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1: %2 %3</source>
        <translation>%1: %2 %3</translation>
    </message>
    <message>
        <source>Ask how it came about</source>
        <translation>Fragen, wie es zustande kam</translation>
    </message>
</context>
<context>
    <name>FiguresPage</name>
    <message>
        <source>from the front</source>
        <translation>von vorn</translation>
    </message>
    <message>
        <source>turn round</source>
        <translation>umdrehen</translation>
    </message>
    <message>
        <source>Look from the front</source>
        <translation>Von vorn ansehen</translation>
    </message>
    <message>
        <source>Look from the side</source>
        <translation>Von der Seite ansehen</translation>
    </message>
    <message>
        <source>compare</source>
        <translation>vergleichen</translation>
    </message>
    <message>
        <source>Compare other choices</source>
        <translation>Andere Möglichkeiten vergleichen</translation>
    </message>
    <message>
        <source>hanging</source>
        <translation>Dekoration</translation>
    </message>
    <message>
        <source>What hangs here</source>
        <translation>Was hier hängt</translation>
    </message>
    <message>
        <source>measure</source>
        <translation>messen</translation>
    </message>
    <message>
        <source>Measure this window</source>
        <translation>Dieses Fenster messen</translation>
    </message>
    <message>
        <source>draw them back</source>
        <translation>aufziehen</translation>
    </message>
    <message>
        <source>draw them shut</source>
        <translation>zuziehen</translation>
    </message>
    <message>
        <source>Heights and widths</source>
        <translation>Höhen und Breiten</translation>
    </message>
    <message>
        <source>Back to the figures</source>
        <translation>Zurück zu den Zahlen</translation>
    </message>
    <message>
        <source>How it came about</source>
        <translation>Wie es zustande kam</translation>
    </message>
    <message>
        <source>show the client</source>
        <translation>der Kundschaft zeigen</translation>
    </message>
    <message>
        <source>taken twice: settle</source>
        <translation>zweimal genommen: entscheiden</translation>
    </message>
    <message>
        <source>Settle what was taken twice</source>
        <translation>Entscheiden, was zweimal genommen wurde</translation>
    </message>
</context>
<context>
    <name>FileChooser</name>
    <message>
        <source>Choose a photo</source>
        <translation>Foto auswählen</translation>
    </message>
    <message>
        <source>Pictures (*.jpg *.jpeg *.png *.webp)</source>
        <translation>Bilder (*.jpg *.jpeg *.png *.webp)</translation>
    </message>
</context>
<context>
    <name>FilePage</name>
    <message>
        <source>This visit as a file</source>
        <translation>Dieser Besuch als Datei</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>Write the file</source>
        <translation>Datei schreiben</translation>
    </message>
    <message>
        <source>hand it on</source>
        <translation>weitergeben</translation>
    </message>
    <message>
        <source>Hand the file on</source>
        <translation>Die Datei weitergeben</translation>
    </message>
    <message>
        <source>One file holds the survey and its photos: to keep elsewhere, or to hand to someone who takes it in with Truehang. Whoever has it reads the client’s name and address.</source>
        <translation>Eine Datei enthält das Aufmaß und seine Fotos: um sie anderswo aufzuheben oder jemandem zu geben, der sie mit Truehang übernimmt. Wer sie hat, liest Namen und Adresse der Kundschaft.</translation>
    </message>
</context>
<context>
    <name>FormFields</name>
    <message>
        <source>Caution</source>
        <translation>Vorsicht</translation>
    </message>
</context>
<context>
    <name>HangingPage</name>
    <message>
        <source>cloths</source>
        <translation>Stoffe</translation>
    </message>
    <message>
        <source>Cloths of this house</source>
        <translation>Stoffe dieses Hauses</translation>
    </message>
    <message>
        <source>Hang something here</source>
        <translation>Hier etwas aufhängen</translation>
    </message>
    <message>
        <source>See the figures</source>
        <translation>Zahlen ansehen</translation>
    </message>
    <message>
        <source>measure</source>
        <translation>messen</translation>
    </message>
    <message>
        <source>Measure this window</source>
        <translation>Dieses Fenster messen</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>The curtain or blind</source>
        <translation>Vorhang oder Raffrollo</translation>
    </message>
    <message>
        <source>What it hangs from</source>
        <translation>Woran es hängt</translation>
    </message>
    <message>
        <source>add a layer</source>
        <translation>Lage hinzufügen</translation>
    </message>
    <message>
        <source>Add a layer on the room’s side</source>
        <translation>Eine Lage zum Raum hin hinzufügen</translation>
    </message>
    <message>
        <source>take this layer out</source>
        <translation>diese Lage entfernen</translation>
    </message>
    <message>
        <source>keep this hardware in your list</source>
        <translation>diese Stange in Ihre Liste</translation>
    </message>
    <message>
        <source>your list</source>
        <translation>Ihre Liste</translation>
    </message>
    <message>
        <source>Take hardware or a cloth from your list</source>
        <translation>Stange oder Stoff aus Ihrer Liste nehmen</translation>
    </message>
</context>
<context>
    <name>HistoryPanel</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>say which one counts</source>
        <translation>sagen, welches gilt</translation>
    </message>
</context>
<context>
    <name>Keypad</name>
    <message>
        <source>feet</source>
        <translation>Fuß</translation>
    </message>
    <message>
        <source>inches</source>
        <translation>Zoll</translation>
    </message>
    <message>
        <source>over</source>
        <translation>durch</translation>
    </message>
    <message>
        <source>Keypad</source>
        <translation>Tastenfeld</translation>
    </message>
    <message>
        <source>back</source>
        <translation>zurück</translation>
    </message>
    <message>
        <source>Back to the station before</source>
        <translation>Zurück zum Maß davor</translation>
    </message>
    <message>
        <source>16ths</source>
        <translation>16tel</translation>
    </message>
    <message>
        <source>8ths</source>
        <translation>8tel</translation>
    </message>
    <message>
        <source>Sixteenths</source>
        <translation>Sechzehntel</translation>
    </message>
    <message>
        <source>Eighths</source>
        <translation>Achtel</translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation>Dezimalzeichen</translation>
    </message>
    <message>
        <source>rub out</source>
        <translation>löschen</translation>
    </message>
    <message>
        <source>Rub out</source>
        <translation>Löschen</translation>
    </message>
    <message>
        <source>Fractions</source>
        <translation>Brüche</translation>
    </message>
    <message>
        <source>Degrees</source>
        <translation>Grad</translation>
    </message>
    <message>
        <source>Unit, now %1</source>
        <translation>Einheit, jetzt %1</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Weiter</translation>
    </message>
</context>
<context>
    <name>LeavingPage</name>
    <message>
        <source>Before leaving</source>
        <translation>Bevor Sie gehen</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>Go to the first</source>
        <translation>Zum ersten</translation>
    </message>
</context>
<context>
    <name>LightFigures</name>
    <message>
        <source>Hours of possible sun</source>
        <translation>Stunden möglicher Sonne</translation>
    </message>
    <message>
        <source>glass</source>
        <translation>Glas</translation>
    </message>
    <message>
        <source>cloth</source>
        <translation>Stoff</translation>
    </message>
    <message>
        <source>Average daylight factor</source>
        <translation>Mittlerer Tageslichtquotient</translation>
    </message>
    <message>
        <source>Would tell more</source>
        <translation>Würde mehr sagen</translation>
    </message>
    <message>
        <source>Taken as</source>
        <translation>Angenommen</translation>
    </message>
</context>
<context>
    <name>ListsPage</name>
    <message>
        <source>Your lists</source>
        <translation>Ihre Listen</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Nothing is kept here yet. A cloth, hardware or house rules of a visit are kept by “keep in your list” on their page, and can then be chosen at any window.</source>
        <translation>Hier steht noch nichts. Stoffe, Stangen und Hausregeln eines Besuchs kommen mit „in Ihre Liste“ auf ihrer Seite hierher und lassen sich dann an jedem Fenster wählen.</translation>
    </message>
    <message>
        <source>Touch what this visit takes. It is copied: the list stays as it is.</source>
        <translation>Tippen Sie an, was dieser Besuch übernimmt. Es wird kopiert: Die Liste bleibt, wie sie ist.</translation>
    </message>
    <message>
        <source>Find</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>delete for good</source>
        <translation>endgültig löschen</translation>
    </message>
    <message>
        <source>Delete for good what was taken out of your lists</source>
        <translation>Endgültig löschen, was aus Ihren Listen genommen wurde</translation>
    </message>
    <message>
        <source>Nothing in your lists is called that.</source>
        <translation>So heißt nichts in Ihren Listen.</translation>
    </message>
    <message>
        <source>Bring it back</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <source>Back to your lists</source>
        <translation>Zurück zu Ihren Listen</translation>
    </message>
    <message>
        <source>This was taken out of the list. Visits that have it keep it.</source>
        <translation>Das wurde aus der Liste genommen. Besuche, die es haben, behalten es.</translation>
    </message>
    <message>
        <source>To change it, take it into a visit, change it there and keep it again.</source>
        <translation>Zum Ändern: in einen Besuch übernehmen, dort ändern und wieder in die Liste aufnehmen.</translation>
    </message>
    <message>
        <source>take it out of the list</source>
        <translation>aus der Liste nehmen</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Truehang</source>
        <translation>Truehang</translation>
    </message>
</context>
<context>
    <name>MarkedPicture</name>
    <message>
        <source>Arrow keys move the cross or the chosen mark, Return sets an end</source>
        <translation>Pfeiltasten bewegen das Kreuz oder die gewählte Markierung, Eingabe setzt ein Ende</translation>
    </message>
</context>
<context>
    <name>MarksPanel</name>
    <message>
        <source>Marks</source>
        <translation>Markierungen</translation>
    </message>
    <message>
        <source>Done with the marks</source>
        <translation>Mit den Markierungen fertig</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>take it off</source>
        <translation>entfernen</translation>
    </message>
    <message>
        <source>Take this mark off; undo brings it back</source>
        <translation>Diese Markierung entfernen; Rückgängig holt sie zurück</translation>
    </message>
    <message>
        <source>The photo to draw on</source>
        <translation>Das Foto zum Zeichnen</translation>
    </message>
    <message>
        <source>The finger draws</source>
        <translation>Der Finger zeichnet</translation>
    </message>
    <message>
        <source>an arrow</source>
        <translation>einen Pfeil</translation>
    </message>
    <message>
        <source>a line</source>
        <translation>eine Linie</translation>
    </message>
    <message>
        <source>words</source>
        <translation>Worte</translation>
    </message>
    <message>
        <source>a station</source>
        <translation>ein Maß</translation>
    </message>
    <message>
        <source>nothing: it chooses</source>
        <translation>nichts: er wählt aus</translation>
    </message>
    <message>
        <source>Not drawn</source>
        <translation>Nicht gezeichnet</translation>
    </message>
    <message>
        <source>The words, then touch where they go</source>
        <translation>Erst die Worte, dann die Stelle antippen</translation>
    </message>
    <message>
        <source>Words beside it</source>
        <translation>Worte daneben</translation>
    </message>
    <message>
        <source>The station, then touch where it is</source>
        <translation>Erst die Messstelle, dann antippen, wo sie ist</translation>
    </message>
    <message>
        <source>chosen</source>
        <translation>gewählt</translation>
    </message>
</context>
<context>
    <name>ObstructionsPage</name>
    <message>
        <source>add</source>
        <translation>dazu</translation>
    </message>
    <message>
        <source>Add something that is in the way</source>
        <translation>Etwas hinzufügen, das im Weg ist</translation>
    </message>
    <message>
        <source>What hangs here</source>
        <translation>Was hier hängt</translation>
    </message>
    <message>
        <source>measure</source>
        <translation>messen</translation>
    </message>
    <message>
        <source>Measure this window</source>
        <translation>Dieses Fenster messen</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>Is anything in the way?</source>
        <translation>Ist etwas im Weg?</translation>
    </message>
    <message>
        <source>In the way</source>
        <translation>Im Weg</translation>
    </message>
    <message>
        <source>A radiator, a sill board, a switch, a door that opens across. Add what a curtain or a drill would meet.</source>
        <translation>Ein Heizkörper, eine Fensterbank, ein Schalter, eine Tür, die davor aufgeht. Tragen Sie ein, woran ein Vorhang oder ein Bohrer stoßen würde.</translation>
    </message>
    <message>
        <source>Caution</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>add something</source>
        <translation>etwas hinzufügen</translation>
    </message>
    <message>
        <source>Add something</source>
        <translation>Etwas hinzufügen</translation>
    </message>
    <message>
        <source>Done with this one</source>
        <translation>Damit fertig</translation>
    </message>
    <message>
        <source>take it out</source>
        <translation>herausnehmen</translation>
    </message>
    <message>
        <source>Take it out; undo brings it back</source>
        <translation>Herausnehmen; rückgängig holt es zurück</translation>
    </message>
    <message>
        <source>What is in the way?</source>
        <translation>Was ist im Weg?</translation>
    </message>
    <message>
        <source>from the front</source>
        <translation>von vorn</translation>
    </message>
    <message>
        <source>from the side</source>
        <translation>von der Seite</translation>
    </message>
    <message>
        <source>Look from the front</source>
        <translation>Von vorn ansehen</translation>
    </message>
    <message>
        <source>Look from the side</source>
        <translation>Von der Seite ansehen</translation>
    </message>
    <message>
        <source>%1. On: %2</source>
        <translation>%1. An: %2</translation>
    </message>
    <message>
        <source>Type how far it stands out from the wall.</source>
        <translation>Tippen Sie ein, wie weit es von der Wand vorsteht.</translation>
    </message>
    <message>
        <source>Drag it on the drawing, or type the numbers. Arrow keys move it too.</source>
        <translation>Ziehen Sie es auf der Zeichnung oder tippen Sie die Maße ein. Pfeiltasten verschieben es auch.</translation>
    </message>
    <message>
        <source>photos of it</source>
        <translation>Fotos davon</translation>
    </message>
    <message>
        <source>Photos: what comes in is of this</source>
        <translation>Fotos: was hereinkommt, zeigt dies</translation>
    </message>
</context>
<context>
    <name>OnPhoto</name>
    <message>
        <source>without the photo</source>
        <translation>ohne das Foto</translation>
    </message>
    <message>
        <source>on the photo</source>
        <translation>auf dem Foto</translation>
    </message>
    <message>
        <source>Take the photo away from under the drawing</source>
        <translation>Das Foto unter der Zeichnung wegnehmen</translation>
    </message>
    <message>
        <source>Lay the straightened photo under the drawing</source>
        <translation>Das entzerrte Foto unter die Zeichnung legen</translation>
    </message>
</context>
<context>
    <name>OutlookPage</name>
    <message>
        <source>What hangs here</source>
        <translation>Was hier hängt</translation>
    </message>
    <message>
        <source>measure</source>
        <translation>messen</translation>
    </message>
    <message>
        <source>Measure this window</source>
        <translation>Dieses Fenster messen</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>which way it faces</source>
        <translation>wohin es schaut</translation>
    </message>
    <message>
        <source>what stands outside</source>
        <translation>was draußen steht</translation>
    </message>
    <message>
        <source>glass and room</source>
        <translation>Glas und Raum</translation>
    </message>
    <message>
        <source>Glass and room</source>
        <translation>Glas und Raum</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>The room, for its daylight</source>
        <translation>Der Raum, für sein Tageslicht</translation>
    </message>
    <message>
        <source>The glass of this window</source>
        <translation>Das Glas dieses Fensters</translation>
    </message>
</context>
<context>
    <name>OverviewPanel</name>
    <message>
        <source>visit</source>
        <translation>Besuch</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>Go on measuring</source>
        <translation>Weiter messen</translation>
    </message>
    <message>
        <source>not taken: %1</source>
        <translation>nicht genommen: %1</translation>
    </message>
    <message>
        <source>no tape has confirmed it yet</source>
        <translation>noch mit keinem Bandmaß bestätigt</translation>
    </message>
    <message>
        <source>doesn’t add up with the others</source>
        <translation>passt nicht zu den anderen</translation>
    </message>
    <message>
        <source>to measure</source>
        <translation>zu messen</translation>
    </message>
    <message>
        <source>take a level line</source>
        <translation>Meterriss anlegen</translation>
    </message>
    <message>
        <source>Name of this window</source>
        <translation>Name dieses Fensters</translation>
    </message>
    <message>
        <source>What else can be measured</source>
        <translation>Was noch gemessen werden kann</translation>
    </message>
    <message>
        <source>take this window out</source>
        <translation>dieses Fenster herausnehmen</translation>
    </message>
    <message>
        <source>Take this window out of the visit; it can be brought back</source>
        <translation>Dieses Fenster aus dem Besuch nehmen; es lässt sich zurückholen</translation>
    </message>
    <message>
        <source>stop saying it aloud</source>
        <translation>nicht mehr vorlesen</translation>
    </message>
    <message>
        <source>say it aloud</source>
        <translation>vorlesen</translation>
    </message>
    <message>
        <source>Stations and readings said aloud</source>
        <translation>Maße vorlesen</translation>
    </message>
</context>
<context>
    <name>Pages</name>
    <message>
        <source>Stop</source>
        <translation>Halt</translation>
    </message>
    <message>
        <source>try again</source>
        <translation>noch einmal versuchen</translation>
    </message>
</context>
<context>
    <name>PhotosPage</name>
    <message>
        <source>Photos, %1</source>
        <translation>Fotos, %1</translation>
    </message>
    <message>
        <source>Take a photo</source>
        <translation>Foto aufnehmen</translation>
    </message>
    <message>
        <source>Choose a file</source>
        <translation>Datei auswählen</translation>
    </message>
    <message>
        <source>measure</source>
        <translation>messen</translation>
    </message>
    <message>
        <source>Measure this window</source>
        <translation>Dieses Fenster messen</translation>
    </message>
    <message>
        <source>choose a file</source>
        <translation>Datei auswählen</translation>
    </message>
    <message>
        <source>paste</source>
        <translation>einfügen</translation>
    </message>
    <message>
        <source>Take in the picture in the clipboard</source>
        <translation>Das Bild aus der Zwischenablage übernehmen</translation>
    </message>
    <message>
        <source>No camera here, choose a file.</source>
        <translation>Keine Kamera hier, wählen Sie eine Datei.</translation>
    </message>
    <message>
        <source>Not taken in</source>
        <translation>Nicht übernommen</translation>
    </message>
    <message>
        <source>No photos of this window yet. Where a photo was taken and by whom is left out as it comes in.</source>
        <translation>Noch keine Fotos dieses Fensters. Wo und von wem ein Foto aufgenommen wurde, wird beim Übernehmen weggelassen.</translation>
    </message>
    <message numerus="yes">
        <source>%n photo(s) coming in</source>
        <translation>
            <numerusform>%n Foto kommt</numerusform>
            <numerusform>%n Fotos kommen</numerusform>
        </translation>
    </message>
    <message>
        <source>What it shows</source>
        <translation>Was es zeigt</translation>
    </message>
    <message>
        <source>take it off</source>
        <translation>entfernen</translation>
    </message>
    <message>
        <source>Take this photo off the window; undo brings it back</source>
        <translation>Dieses Foto vom Fenster entfernen; rückgängig holt es zurück</translation>
    </message>
    <message>
        <source>No photos of this window yet. Where a photo was taken and by whom stays in it, as the settings say.</source>
        <translation>Noch keine Fotos von diesem Fenster. Wo und von wem ein Foto aufgenommen wurde, bleibt darin, wie es die Einstellungen sagen.</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>draw on it</source>
        <translation>darauf zeichnen</translation>
    </message>
    <message>
        <source>Draw arrows, lines and words on this photo</source>
        <translation>Pfeile, Linien und Worte auf dieses Foto zeichnen</translation>
    </message>
    <message>
        <source>Photo %1</source>
        <translation>Foto %1</translation>
    </message>
    <message>
        <source>What comes in now belongs to: %1</source>
        <translation>Was jetzt hereinkommt, zeigt: %1</translation>
    </message>
    <message>
        <source>belongs to: %1</source>
        <translation>zeigt: %1</translation>
    </message>
    <message>
        <source>This photo belongs to: %1. Choose what it belongs to</source>
        <translation>Dieses Foto zeigt: %1. Wählen, was es zeigt</translation>
    </message>
    <message>
        <source>What this photo belongs to</source>
        <translation>Was dieses Foto zeigt</translation>
    </message>
    <message>
        <source>use it as a tape</source>
        <translation>als Bandmaß nehmen</translation>
    </message>
    <message>
        <source>Use this photo as a rough tape: a sheet of known size and the opening are tapped</source>
        <translation>Dieses Foto als grobes Bandmaß nehmen: Ein Blatt bekannter Größe und die Öffnung werden angetippt</translation>
    </message>
</context>
<context>
    <name>PlaceAsked</name>
    <message>
        <source>Decide</source>
        <translation>Entscheiden</translation>
    </message>
    <message>
        <source>It isn’t known where the house stands. The sun goes by that.</source>
        <translation>Es ist nicht bekannt, wo das Haus steht. Danach richtet sich die Sonne.</translation>
    </message>
    <message>
        <source>ask where we are</source>
        <translation>fragen, wo wir sind</translation>
    </message>
</context>
<context>
    <name>Placing</name>
    <message>
        <source>Drawing of the window</source>
        <translation>Zeichnung des Fensters</translation>
    </message>
</context>
<context>
    <name>QObject</name>
    <message>
        <source>Brackets are counted: a whole number, as 3.</source>
        <translation>Träger werden gezählt: eine ganze Zahl, etwa 3.</translation>
    </message>
    <message>
        <source>%1: %2, continued</source>
        <translation>%1: %2, Fortsetzung</translation>
    </message>
    <message>
        <source>page %1 of %2</source>
        <translation>Seite %1 von %2</translation>
    </message>
    <message>
        <source>Sheet %1</source>
        <translation>Blatt %1</translation>
    </message>
    <message>
        <source>Current? %1</source>
        <translation>Noch gültig? %1</translation>
    </message>
</context>
<context>
    <name>QuestionPart</name>
    <message>
        <source>Answer: %1</source>
        <translation>Beantworten: %1</translation>
    </message>
    <message>
        <source>measure it again</source>
        <translation>noch einmal messen</translation>
    </message>
    <message>
        <source>Measure it again: %1</source>
        <translation>Noch einmal messen: %1</translation>
    </message>
    <message>
        <source>answer with %1</source>
        <translation>mit %1 antworten</translation>
    </message>
    <message>
        <source>Answer in words</source>
        <translation>Antwort in Worten</translation>
    </message>
    <message>
        <source>answer with these words</source>
        <translation>mit diesen Worten antworten</translation>
    </message>
</context>
<context>
    <name>QuestionsPage</name>
    <message>
        <source>Asked by the workroom</source>
        <translation>Gefragt von der Werkstatt</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Nothing is open: everything was answered.</source>
        <translation>Nichts ist offen: Alles ist beantwortet.</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Halt</translation>
    </message>
</context>
<context>
    <name>ReachPanel</name>
    <message>
        <source>Keep this reason</source>
        <translation>Diesen Grund behalten</translation>
    </message>
    <message>
        <source>On without the tape</source>
        <translation>Weiter ohne Bandmaß</translation>
    </message>
    <message>
        <source>To keep an estimate, type it first, then come here.</source>
        <translation>Um eine Schätzung zu behalten, tippen Sie sie erst ein und kommen dann hierher.</translation>
    </message>
    <message>
        <source>Or leave it out: why?</source>
        <translation>Oder auslassen: warum?</translation>
    </message>
    <message>
        <source>In your own words</source>
        <translation>In eigenen Worten</translation>
    </message>
</context>
<context>
    <name>ReadingBlock</name>
    <message>
        <source>Not kept</source>
        <translation>Nicht gesichert</translation>
    </message>
    <message>
        <source>Caution</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>Not taken: %1</source>
        <translation>Nicht genommen: %1</translation>
    </message>
    <message>
        <source>can’t reach</source>
        <translation>unerreichbar</translation>
    </message>
    <message>
        <source>Can’t reach this station</source>
        <translation>Dieses Maß ist nicht zu erreichen</translation>
    </message>
    <message>
        <source>All stations of this window</source>
        <translation>Alle Maße dieses Fensters</translation>
    </message>
    <message>
        <source>earlier</source>
        <translation>frühere</translation>
    </message>
    <message>
        <source>Earlier readings of this station</source>
        <translation>Frühere Werte dieses Maßes</translation>
    </message>
    <message>
        <source>what differs</source>
        <translation>was abweicht</translation>
    </message>
    <message>
        <source>The readings that don’t add up</source>
        <translation>Die Maße, die nicht zusammenpassen</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>Station %1</source>
        <translation>Maß %1</translation>
    </message>
    <message>
        <source>%1, reading in %2</source>
        <translation>%1, Wert in %2</translation>
    </message>
    <message>
        <source>all stations</source>
        <translation>alle Maße</translation>
    </message>
</context>
<context>
    <name>RoomPanel</name>
    <message>
        <source>Room</source>
        <translation>Raum</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Used as</source>
        <translation>Genutzt als</translation>
    </message>
    <message>
        <source>bedroom, office, hotel</source>
        <translation>Schlafzimmer, Büro, Hotel</translation>
    </message>
    <message>
        <source>Small children live or visit here</source>
        <translation>Kleine Kinder wohnen hier oder kommen zu Besuch</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>Written down: %1</source>
        <translation>Notiert: %1</translation>
    </message>
    <message>
        <source>Not known counts as yes: cords are then kept out of reach.</source>
        <translation>Nicht bekannt zählt als ja: Schnüre bleiben dann außer Reichweite.</translation>
    </message>
    <message>
        <source>take this room out</source>
        <translation>diesen Raum herausnehmen</translation>
    </message>
    <message>
        <source>Take this room and its windows out; undo brings them back</source>
        <translation>Diesen Raum mit seinen Fenstern herausnehmen; rückgängig holt sie zurück</translation>
    </message>
    <message>
        <source>earlier</source>
        <translation>früher</translation>
    </message>
    <message>
        <source>Put this room before the one above it</source>
        <translation>Diesen Raum vor den darüber stellen</translation>
    </message>
    <message>
        <source>later</source>
        <translation>später</translation>
    </message>
    <message>
        <source>Put this room after the one below it</source>
        <translation>Diesen Raum hinter den darunter stellen</translation>
    </message>
</context>
<context>
    <name>RoomPart</name>
    <message>
        <source>add a window</source>
        <translation>Fenster dazu</translation>
    </message>
    <message>
        <source>Add a window to %1</source>
        <translation>Fenster in %1 hinzufügen</translation>
    </message>
    <message>
        <source>this room</source>
        <translation>dieser Raum</translation>
    </message>
    <message>
        <source>Name of %1, and who lives there</source>
        <translation>Name von %1, und wer dort wohnt</translation>
    </message>
</context>
<context>
    <name>RulesPage</name>
    <message>
        <source>House rules</source>
        <translation>Hausregeln</translation>
    </message>
    <message>
        <source>Take the workroom’s rules</source>
        <translation>Regeln der Werkstatt übernehmen</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>How sharply edges are read is this house’s own and stays.</source>
        <translation>Wie scharf Kanten abzulesen sind, gehört zu diesem Haus und bleibt.</translation>
    </message>
    <message>
        <source>House rule</source>
        <translation>Hausregel</translation>
    </message>
    <message>
        <source>Back to the rules</source>
        <translation>Zurück zu den Regeln</translation>
    </message>
    <message>
        <source>take the default</source>
        <translation>Vorgabe nehmen</translation>
    </message>
    <message>
        <source>take the workroom’s</source>
        <translation>Wert der Werkstatt nehmen</translation>
    </message>
    <message>
        <source>keep in your list</source>
        <translation>in Ihre Liste</translation>
    </message>
    <message>
        <source>Keep these house rules in your list</source>
        <translation>Diese Hausregeln in Ihre Liste aufnehmen</translation>
    </message>
    <message>
        <source>your list</source>
        <translation>Ihre Liste</translation>
    </message>
    <message>
        <source>Take house rules from your list</source>
        <translation>Hausregeln aus Ihrer Liste nehmen</translation>
    </message>
</context>
<context>
    <name>Screen</name>
    <message>
        <source>back</source>
        <translation>zurück</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
</context>
<context>
    <name>SendPage</name>
    <message>
        <source>To the workroom</source>
        <translation>An die Werkstatt</translation>
    </message>
    <message>
        <source>Send now</source>
        <translation>Jetzt senden</translation>
    </message>
    <message>
        <source>Pair with the workroom</source>
        <translation>Mit der Werkstatt koppeln</translation>
    </message>
    <message>
        <source>Asking the workroom</source>
        <translation>Die Werkstatt wird gefragt</translation>
    </message>
    <message>
        <source>Which workroom is it?</source>
        <translation>Welche Werkstatt ist es?</translation>
    </message>
    <message>
        <source>Address</source>
        <translation>Adresse</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Code</translation>
    </message>
    <message>
        <source>As a file</source>
        <translation>Als Datei</translation>
    </message>
    <message>
        <source>Until the workroom has it, this visit stands on this phone alone. Keep it as a file as well.</source>
        <translation>Bis die Werkstatt ihn hat, steht dieser Besuch nur auf diesem Telefon. Sichern Sie ihn auch als Datei.</translation>
    </message>
    <message>
        <source>keep it as a file</source>
        <translation>als Datei sichern</translation>
    </message>
    <message>
        <source>another workroom</source>
        <translation>andere Werkstatt</translation>
    </message>
    <message>
        <source>Forget this workroom and pair with another</source>
        <translation>Diese Werkstatt vergessen und mit einer anderen koppeln</translation>
    </message>
    <message>
        <source>The workroom shows its address and a code that works once. Its picture code holds both, and so does its pairing text, pasted as the address.</source>
        <translation>Die Werkstatt zeigt ihre Adresse und einen Code, der einmal gilt. Ihr Bildcode enthält beides, ebenso ihr Kopplungstext, als Adresse eingefügt.</translation>
    </message>
    <message>
        <source>photograph the code</source>
        <translation>den Code fotografieren</translation>
    </message>
    <message>
        <source>Photograph the workroom’s code</source>
        <translation>Den Code der Werkstatt fotografieren</translation>
    </message>
    <message>
        <source>read the code from a picture</source>
        <translation>den Code aus einem Bild lesen</translation>
    </message>
    <message>
        <source>Read the code from a picture</source>
        <translation>Den Code aus einem Bild lesen</translation>
    </message>
    <message>
        <source>Looking for the code</source>
        <translation>Der Code wird gesucht</translation>
    </message>
    <message>
        <source>Not paired</source>
        <translation>Nicht gekoppelt</translation>
    </message>
    <message>
        <source>from a picture</source>
        <translation>aus einem Bild</translation>
    </message>
</context>
<context>
    <name>SettingsPage</name>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Back to the visits</source>
        <translation>Zurück zu den Besuchen</translation>
    </message>
    <message>
        <source>The hand that holds the phone</source>
        <translation>Die Hand, die das Telefon hält</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Aussehen</translation>
    </message>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source>as the system</source>
        <translation>wie das System</translation>
    </message>
    <message>
        <source>Letters</source>
        <translation>Schrift</translation>
    </message>
    <message>
        <source>usual</source>
        <translation>üblich</translation>
    </message>
    <message>
        <source>larger</source>
        <translation>größer</translation>
    </message>
    <message>
        <source>large</source>
        <translation>groß</translation>
    </message>
    <message>
        <source>largest</source>
        <translation>am größten</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>Inches to the nearest</source>
        <translation>Zoll genau auf ein</translation>
    </message>
    <message>
        <source>eighth</source>
        <translation>Achtel</translation>
    </message>
    <message>
        <source>sixteenth</source>
        <translation>Sechzehntel</translation>
    </message>
    <message>
        <source>your lists</source>
        <translation>Ihre Listen</translation>
    </message>
    <message>
        <source>Your own cloths, hardware and house rules</source>
        <translation>Ihre eigenen Stoffe, Stangen und Hausregeln</translation>
    </message>
    <message>
        <source>by the light around</source>
        <translation>nach dem Licht im Raum</translation>
    </message>
    <message>
        <source>Stations and readings</source>
        <translation>Maße</translation>
    </message>
    <message>
        <source>shown only</source>
        <translation>nur zeigen</translation>
    </message>
    <message>
        <source>said aloud too</source>
        <translation>auch vorlesen</translation>
    </message>
    <message>
        <source>Where a photo was taken, and by whom</source>
        <translation>Wo und von wem ein Foto aufgenommen wurde</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>weglassen</translation>
    </message>
    <message>
        <source>kept</source>
        <translation>behalten</translation>
    </message>
    <message>
        <source>Photos that come in from now on tell the workroom where and by whom they were taken.</source>
        <translation>Fotos, die ab jetzt dazukommen, sagen der Werkstatt, wo und von wem sie aufgenommen wurden.</translation>
    </message>
</context>
<context>
    <name>SheetsPage</name>
    <message>
        <source>Sheets to print</source>
        <translation>Blätter zum Drucken</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>Write the PDF</source>
        <translation>PDF schreiben</translation>
    </message>
    <message>
        <source>hand it on</source>
        <translation>weitergeben</translation>
    </message>
    <message>
        <source>Hand the PDF on</source>
        <translation>Das PDF weitergeben</translation>
    </message>
    <message>
        <source>Which</source>
        <translation>Welche</translation>
    </message>
    <message>
        <source>all</source>
        <translation>alle</translation>
    </message>
    <message>
        <source>measure sheets</source>
        <translation>Maßblätter</translation>
    </message>
    <message>
        <source>cutting list</source>
        <translation>Zuschnittliste</translation>
    </message>
    <message>
        <source>making sheets</source>
        <translation>Nähblätter</translation>
    </message>
    <message>
        <source>hanging sheets</source>
        <translation>Montageblätter</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>A4</source>
        <translation>A4</translation>
    </message>
    <message>
        <source>US Letter</source>
        <translation>US Letter</translation>
    </message>
    <message>
        <source>Lengths in</source>
        <translation>Längen in</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>inches</source>
        <translation>Zoll</translation>
    </message>
    <message>
        <source>Of</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>The cutting list is of the whole house all the same: a roll is cut for all its windows.</source>
        <translation>Die Zuschnittliste gilt trotzdem für das ganze Haus: Eine Rolle wird für alle Fenster zugeschnitten.</translation>
    </message>
    <message>
        <source>client’s copy</source>
        <translation>für die Kundschaft</translation>
    </message>
    <message>
        <source>Stop writing</source>
        <translation>Schreiben anhalten</translation>
    </message>
    <message>
        <source>light sheets</source>
        <translation>Lichtblätter</translation>
    </message>
</context>
<context>
    <name>SignPanel</name>
    <message>
        <source>Agree and sign</source>
        <translation>Zustimmen und unterschreiben</translation>
    </message>
    <message>
        <source>I agree</source>
        <translation>Ich stimme zu</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>take the agreement back</source>
        <translation>Zustimmung zurücknehmen</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Halt</translation>
    </message>
    <message>
        <source>Not settled yet, and no part of what is signed:</source>
        <translation>Noch nicht geklärt und nicht Teil dessen, was unterschrieben wird:</translation>
    </message>
    <message>
        <source>What was agreed</source>
        <translation>Was vereinbart wurde</translation>
    </message>
    <message>
        <source>What is agreed</source>
        <translation>Was vereinbart wird</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>It was signed without a copy of the figures: what has changed since can’t be told.</source>
        <translation>Es wurde ohne Abschrift der Zahlen unterschrieben: Was sich seither geändert hat, lässt sich nicht sagen.</translation>
    </message>
    <message>
        <source>Hand the phone over. Whoever agrees writes their name; the cloth is cut to what stands here.</source>
        <translation>Geben Sie das Telefon aus der Hand. Wer zustimmt, schreibt seinen Namen; der Stoff wird nach dem zugeschnitten, was hier steht.</translation>
    </message>
    <message>
        <source>Signature, with a finger; the name alone will do</source>
        <translation>Unterschrift, mit dem Finger; der Name allein genügt</translation>
    </message>
    <message>
        <source>The signature</source>
        <translation>Die Unterschrift</translation>
    </message>
    <message>
        <source>A box to sign in</source>
        <translation>Ein Feld zum Unterschreiben</translation>
    </message>
    <message>
        <source>A box to sign in, signed</source>
        <translation>Ein Feld zum Unterschreiben, unterschrieben</translation>
    </message>
    <message>
        <source>wipe it off</source>
        <translation>wegwischen</translation>
    </message>
    <message>
        <source>Wipe the signature off</source>
        <translation>Die Unterschrift wegwischen</translation>
    </message>
</context>
<context>
    <name>SitePanel</name>
    <message>
        <source>Client and site</source>
        <translation>Kundschaft und Ort</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>Where it is</source>
        <translation>Wo es ist</translation>
    </message>
    <message>
        <source>The address is enough. The sun on the windows is worked from the position, where there is one.</source>
        <translation>Die Adresse genügt. Die Sonne auf den Fenstern wird aus der Position berechnet, wo es eine gibt.</translation>
    </message>
    <message>
        <source>take the position here</source>
        <translation>Position hier bestimmen</translation>
    </message>
    <message>
        <source>take it again</source>
        <translation>neu bestimmen</translation>
    </message>
    <message>
        <source>Take the position here</source>
        <translation>Die Position hier bestimmen</translation>
    </message>
    <message>
        <source>stop asking</source>
        <translation>nicht weiter fragen</translation>
    </message>
    <message>
        <source>forget it</source>
        <translation>vergessen</translation>
    </message>
    <message>
        <source>Forget the position</source>
        <translation>Die Position vergessen</translation>
    </message>
</context>
<context>
    <name>SkylinePanel</name>
    <message>
        <source>What stands outside</source>
        <translation>Was draußen steht</translation>
    </message>
    <message>
        <source>Done with this one</source>
        <translation>Damit fertig</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>Stand in the middle of the window. A fist at arm’s length is about 10° high, and 10° wide.</source>
        <translation>Stellen Sie sich in die Mitte des Fensters. Eine Faust am ausgestreckten Arm ist etwa 10° hoch und 10° breit.</translation>
    </message>
    <message>
        <source>a house</source>
        <translation>ein Haus</translation>
    </message>
    <message>
        <source>a tree</source>
        <translation>ein Baum</translation>
    </message>
    <message>
        <source>a hill</source>
        <translation>ein Hügel</translation>
    </message>
    <message>
        <source>a wall</source>
        <translation>eine Mauer</translation>
    </message>
    <message>
        <source>higher</source>
        <translation>höher</translation>
    </message>
    <message>
        <source>lower</source>
        <translation>niedriger</translation>
    </message>
    <message>
        <source>to the left</source>
        <translation>nach links</translation>
    </message>
    <message>
        <source>to the right</source>
        <translation>nach rechts</translation>
    </message>
    <message>
        <source>wider</source>
        <translation>breiter</translation>
    </message>
    <message>
        <source>narrower</source>
        <translation>schmaler</translation>
    </message>
    <message>
        <source>take it out</source>
        <translation>herausnehmen</translation>
    </message>
    <message>
        <source>Take it out; undo brings it back</source>
        <translation>Herausnehmen; rückgängig holt es zurück</translation>
    </message>
</context>
<context>
    <name>StationPart</name>
    <message>
        <source>Measuring: %1</source>
        <translation>Gemessen wird: %1</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>Photos of this window</source>
        <translation>Fotos dieses Fensters</translation>
    </message>
</context>
<context>
    <name>SunDrawing</name>
    <message>
        <source>Calendar of the sun</source>
        <translation>Kalender der Sonne</translation>
    </message>
    <message>
        <source>Where the sun stands in this window</source>
        <translation>Wo die Sonne in diesem Fenster steht</translation>
    </message>
</context>
<context>
    <name>TakeInPanel</name>
    <message>
        <source>Choose a visit’s file</source>
        <translation>Datei eines Besuchs wählen</translation>
    </message>
    <message>
        <source>A visit from a file</source>
        <translation>Besuch aus einer Datei</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Open the visit</source>
        <translation>Besuch öffnen</translation>
    </message>
    <message>
        <source>Choose the file</source>
        <translation>Datei wählen</translation>
    </message>
    <message>
        <source>The whole file is looked through first. A visit that is here already is never written over.</source>
        <translation>Zuerst wird die ganze Datei geprüft. Ein Besuch, der schon hier ist, wird nie überschrieben.</translation>
    </message>
    <message>
        <source>%1 is damaged on this phone. Choose its file, if it was kept as one; of a visit that was sent the workroom can make one. It is put beside what is here, which is left as it is.</source>
        <translation>%1 ist auf diesem Telefon beschädigt. Wählen Sie die Datei, falls der Besuch als Datei gesichert wurde; von einem gesendeten Besuch kann die Werkstatt eine machen. Er kommt neben das, was hier ist; das bleibt, wie es ist.</translation>
    </message>
</context>
<context>
    <name>TapePanel</name>
    <message>
        <source>A photo as a tape</source>
        <translation>Ein Foto als Bandmaß</translation>
    </message>
    <message>
        <source>Set this corner</source>
        <translation>Diese Ecke setzen</translation>
    </message>
    <message>
        <source>Done with the photo</source>
        <translation>Fertig mit dem Foto</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>%1: move the cross onto it, then set it.</source>
        <translation>%1: das Kreuz darauf schieben, dann setzen.</translation>
    </message>
    <message>
        <source>Every corner is tapped. Tapped again, each gets surer. Next: %1.</source>
        <translation>Alle Ecken sind angetippt. Noch einmal angetippt, wird jede sicherer. Als Nächstes: %1.</translation>
    </message>
    <message>
        <source>%1: touch it in the picture.</source>
        <translation>%1: im Bild antippen.</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>The cross one pixel to the left</source>
        <translation>Das Kreuz einen Bildpunkt nach links</translation>
    </message>
    <message>
        <source>up</source>
        <translation>hoch</translation>
    </message>
    <message>
        <source>The cross one pixel up</source>
        <translation>Das Kreuz einen Bildpunkt nach oben</translation>
    </message>
    <message>
        <source>down</source>
        <translation>runter</translation>
    </message>
    <message>
        <source>The cross one pixel down</source>
        <translation>Das Kreuz einen Bildpunkt nach unten</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>The cross one pixel to the right</source>
        <translation>Das Kreuz einen Bildpunkt nach rechts</translation>
    </message>
    <message>
        <source>Says nothing yet</source>
        <translation>Sagt noch nichts</translation>
    </message>
    <message>
        <source>Measure again</source>
        <translation>Neu messen</translation>
    </message>
    <message>
        <source>By this photo</source>
        <translation>Nach diesem Foto</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>± is twice the standard uncertainty. A photo is only rough: it checks the tape and changes no size.</source>
        <translation>± ist die doppelte Standardunsicherheit. Ein Foto ist nur grob: Es prüft das Bandmaß und ändert kein Maß.</translation>
    </message>
    <message>
        <source>Size of the sheet in hand</source>
        <translation>Größe dieses Blatts</translation>
    </message>
    <message>
        <source>Size of the sheet</source>
        <translation>Größe des Blatts</translation>
    </message>
    <message>
        <source>A4</source>
        <translation>A4</translation>
    </message>
    <message>
        <source>Letter</source>
        <translation>Letter</translation>
    </message>
    <message>
        <source>another size</source>
        <translation>eine andere Größe</translation>
    </message>
    <message>
        <source>How it lies on the wall</source>
        <translation>Wie es an der Wand liegt</translation>
    </message>
    <message>
        <source>upright</source>
        <translation>hochkant</translation>
    </message>
    <message>
        <source>across</source>
        <translation>quer</translation>
    </message>
    <message>
        <source>Its width, from its first corner to its second</source>
        <translation>Seine Breite, von der ersten Ecke zur zweiten</translation>
    </message>
    <message>
        <source>Its height</source>
        <translation>Seine Höhe</translation>
    </message>
    <message>
        <source>The corner to tap</source>
        <translation>Die Ecke zum Antippen</translation>
    </message>
    <message>
        <source>forget its taps</source>
        <translation>ihr Antippen vergessen</translation>
    </message>
    <message>
        <source>Forget the taps of this corner; undo brings them back</source>
        <translation>Das Antippen dieser Ecke vergessen; rückgängig bringt es zurück</translation>
    </message>
    <message>
        <source>one more sheet</source>
        <translation>noch ein Blatt</translation>
    </message>
    <message>
        <source>One more sheet on this photo: on the other side of the opening it makes the sizes much surer</source>
        <translation>Noch ein Blatt auf diesem Foto: Auf der anderen Seite der Öffnung macht es die Maße viel sicherer</translation>
    </message>
    <message>
        <source>no tape any more</source>
        <translation>kein Bandmaß mehr</translation>
    </message>
    <message>
        <source>This photo is no tape any more; undo brings it back</source>
        <translation>Dieses Foto ist kein Bandmaß mehr; rückgängig bringt es zurück</translation>
    </message>
</context>
<context>
    <name>TapedPicture</name>
    <message>
        <source>The photo to tap on</source>
        <translation>Das Foto zum Antippen</translation>
    </message>
    <message>
        <source>Arrow keys move the cross, with Shift by a single pixel; Return sets the corner</source>
        <translation>Pfeiltasten bewegen das Kreuz, mit Umschalt um einen Bildpunkt; Eingabe setzt die Ecke</translation>
    </message>
</context>
<context>
    <name>TwicePage</name>
    <message>
        <source>Taken twice</source>
        <translation>Zweimal genommen</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>Undo: %1</source>
        <translation>Rückgängig: %1</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>Nothing is left to be said: one of each counts.</source>
        <translation>Alles ist entschieden: Von jedem gilt eines.</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Halt</translation>
    </message>
    <message>
        <source>A tap says what counts; undo brings both back.</source>
        <translation>Ein Tipp sagt, was gilt; rückgängig holt beides zurück.</translation>
    </message>
</context>
<context>
    <name>TwiceRow</name>
    <message>
        <source>holds meanwhile</source>
        <translation>gilt bis dahin</translation>
    </message>
</context>
<context>
    <name>VisitAsks</name>
    <message>
        <source>Decide</source>
        <translation>Entscheiden</translation>
    </message>
    <message>
        <source>Taken twice</source>
        <translation>Zweimal genommen</translation>
    </message>
    <message>
        <source>Taken twice: %1</source>
        <translation>Zweimal genommen: %1</translation>
    </message>
    <message>
        <source>Asked</source>
        <translation>Gefragt</translation>
    </message>
    <message>
        <source>Asked by the workroom</source>
        <translation>Gefragt von der Werkstatt</translation>
    </message>
    <message>
        <source>Asked by the workroom: %1</source>
        <translation>Gefragt von der Werkstatt: %1</translation>
    </message>
</context>
<context>
    <name>VisitPage</name>
    <message>
        <source>send</source>
        <translation>senden</translation>
    </message>
    <message>
        <source>Send to the workroom</source>
        <translation>An die Werkstatt senden</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>rückgängig</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>Client and address</source>
        <translation>Kundschaft und Adresse</translation>
    </message>
    <message>
        <source>Client and site: %1</source>
        <translation>Kundschaft und Ort: %1</translation>
    </message>
    <message>
        <source>add a room</source>
        <translation>Raum hinzufügen</translation>
    </message>
    <message>
        <source>Add a room</source>
        <translation>Raum hinzufügen</translation>
    </message>
    <message>
        <source>How this house is measured</source>
        <translation>Wie dieses Haus gemessen wird</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>Decide</source>
        <translation>Entscheiden</translation>
    </message>
    <message>
        <source>before leaving</source>
        <translation>bevor Sie gehen</translation>
    </message>
    <message>
        <source>What is missing before leaving</source>
        <translation>Was noch fehlt, bevor Sie gehen</translation>
    </message>
    <message>
        <source>Taken out</source>
        <translation>Herausgenommen</translation>
    </message>
    <message>
        <source>Tap a window to bring it back.</source>
        <translation>Tippen Sie ein Fenster an, um es zurückzuholen.</translation>
    </message>
    <message>
        <source>Nothing is taken out.</source>
        <translation>Nichts ist herausgenommen.</translation>
    </message>
    <message>
        <source>Erase for good what was taken out, readings and photos too? What was done to this visit until now can then no longer be undone.</source>
        <translation>Endgültig löschen, was herausgenommen wurde, auch Maße und Fotos? Was an diesem Besuch bisher getan wurde, lässt sich dann nicht mehr rückgängig machen.</translation>
    </message>
    <message>
        <source>Erase what was taken out for good</source>
        <translation>Herausgenommenes endgültig löschen</translation>
    </message>
    <message>
        <source>Keep it as a file</source>
        <translation>Als Datei aufheben</translation>
    </message>
    <message>
        <source>%1 Keep it as a file</source>
        <translation>%1 Als Datei aufheben</translation>
    </message>
    <message>
        <source>Client and site</source>
        <translation>Kundschaft und Ort</translation>
    </message>
</context>
<context>
    <name>VisitRest</name>
    <message>
        <source>Cloth</source>
        <translation>Stoff</translation>
    </message>
    <message>
        <source>Cloths of this house</source>
        <translation>Stoffe dieses Hauses</translation>
    </message>
    <message>
        <source>none yet</source>
        <translation>noch keine</translation>
    </message>
    <message>
        <source>The visit</source>
        <translation>Der Besuch</translation>
    </message>
    <message>
        <source>Sheets to print</source>
        <translation>Blätter zum Drucken</translation>
    </message>
    <message>
        <source>House rules</source>
        <translation>Hausregeln</translation>
    </message>
    <message>
        <source>%1; the workroom has others</source>
        <translation>%1; die Werkstatt hat andere</translation>
    </message>
    <message>
        <source>Agree and sign</source>
        <translation>Zustimmen und unterschreiben</translation>
    </message>
    <message>
        <source>remove this visit</source>
        <translation>diesen Besuch entfernen</translation>
    </message>
    <message>
        <source>Remove this visit; it can be brought back</source>
        <translation>Diesen Besuch entfernen; er lässt sich zurückholen</translation>
    </message>
    <message>
        <source>Taken out</source>
        <translation>Herausgenommen</translation>
    </message>
    <message>
        <source>%1 windows</source>
        <translation>%1 Fenster</translation>
    </message>
    <message>
        <source>Taken out: %1</source>
        <translation>Herausgenommen: %1</translation>
    </message>
    <message>
        <source>This visit as a file</source>
        <translation>Dieser Besuch als Datei</translation>
    </message>
    <message>
        <source>How this house is measured</source>
        <translation>Wie dieses Haus gemessen wird</translation>
    </message>
    <message>
        <source>unit, tape, edges</source>
        <translation>Einheit, Bandmaß, Kanten</translation>
    </message>
</context>
<context>
    <name>VisitRow</name>
    <message>
        <source>not confirmed by the workroom</source>
        <translation>von der Werkstatt nicht bestätigt</translation>
    </message>
</context>
<context>
    <name>VisitsList</name>
    <message>
        <source>Only those: %1</source>
        <translation>Nur diese: %1</translation>
    </message>
    <message>
        <source>Find by title, client or address</source>
        <translation>Nach Titel, Name oder Adresse suchen</translation>
    </message>
    <message>
        <source>Visits</source>
        <translation>Besuche</translation>
    </message>
    <message>
        <source>Removed visits</source>
        <translation>Entfernte Besuche</translation>
    </message>
</context>
<context>
    <name>VisitsPage</name>
    <message>
        <source>Visits</source>
        <translation>Besuche</translation>
    </message>
    <message>
        <source>show all</source>
        <translation>alle zeigen</translation>
    </message>
    <message>
        <source>find</source>
        <translation>suchen</translation>
    </message>
    <message>
        <source>New visit</source>
        <translation>Neuer Besuch</translation>
    </message>
    <message>
        <source>settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>removed</source>
        <translation>entfernte</translation>
    </message>
    <message>
        <source>Removed visits</source>
        <translation>Entfernte Besuche</translation>
    </message>
    <message>
        <source>Nothing here yet. A visit holds one house: its rooms, its windows, and what is to hang there.</source>
        <translation>Hier ist noch nichts. Ein Besuch fasst ein Haus: seine Räume, seine Fenster und was dort hängen soll.</translation>
    </message>
    <message>
        <source>No visit has these words.</source>
        <translation>Kein Besuch enthält diese Wörter.</translation>
    </message>
    <message>
        <source>Tap a visit to bring it back.</source>
        <translation>Tippen Sie auf einen Besuch, um ihn zurückzuholen.</translation>
    </message>
    <message>
        <source>by state</source>
        <translation>nach Stand</translation>
    </message>
    <message>
        <source>Show the visits of one state</source>
        <translation>Die Besuche eines Standes zeigen</translation>
    </message>
    <message>
        <source>No visit stands so.</source>
        <translation>Kein Besuch steht so.</translation>
    </message>
    <message>
        <source>Which visits</source>
        <translation>Welche Besuche</translation>
    </message>
    <message>
        <source>all of them</source>
        <translation>alle</translation>
    </message>
    <message>
        <source>Nothing is removed.</source>
        <translation>Nichts ist entfernt.</translation>
    </message>
    <message>
        <source>Erase the removed visits for good</source>
        <translation>Entfernte Besuche endgültig löschen</translation>
    </message>
    <message>
        <source>from a file</source>
        <translation>aus Datei</translation>
    </message>
    <message>
        <source>Take in a visit from a file</source>
        <translation>Besuch aus einer Datei übernehmen</translation>
    </message>
</context>
<context>
    <name>WindowPanel</name>
    <message>
        <source>New window</source>
        <translation>Neues Fenster</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>south window</source>
        <translation>Südfenster</translation>
    </message>
    <message>
        <source>What shape is it?</source>
        <translation>Welche Form hat es?</translation>
    </message>
</context>
<context>
    <name>WindowPlace</name>
    <message>
        <source>Where it stands</source>
        <translation>Wo es steht</translation>
    </message>
    <message>
        <source>earlier</source>
        <translation>früher</translation>
    </message>
    <message>
        <source>Put this window before the one above it</source>
        <translation>Dieses Fenster vor das darüber stellen</translation>
    </message>
    <message>
        <source>later</source>
        <translation>später</translation>
    </message>
    <message>
        <source>Put this window after the one below it</source>
        <translation>Dieses Fenster hinter das darunter stellen</translation>
    </message>
    <message>
        <source>another like it</source>
        <translation>noch eines davon</translation>
    </message>
    <message>
        <source>Add a window like this one, with nothing measured yet</source>
        <translation>Ein Fenster wie dieses hinzufügen, noch nichts gemessen</translation>
    </message>
    <message>
        <source>Move it to %1</source>
        <translation>Nach %1 verschieben</translation>
    </message>
</context>
<context>
    <name>WindowWords</name>
    <message>
        <source>in the way</source>
        <translation>im Weg</translation>
    </message>
    <message>
        <source>What is in the way</source>
        <translation>Was im Weg ist</translation>
    </message>
    <message>
        <source>hanging</source>
        <translation>Dekoration</translation>
    </message>
    <message>
        <source>What hangs here</source>
        <translation>Was hier hängt</translation>
    </message>
    <message>
        <source>figures</source>
        <translation>Zahlen</translation>
    </message>
    <message>
        <source>Figures of this window</source>
        <translation>Zahlen dieses Fensters</translation>
    </message>
    <message>
        <source>photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>Photos of this window</source>
        <translation>Fotos dieses Fensters</translation>
    </message>
    <message>
        <source>taken twice</source>
        <translation>zweimal genommen</translation>
    </message>
    <message>
        <source>asked</source>
        <translation>gefragt</translation>
    </message>
    <message>
        <source>What the workroom asks about this window</source>
        <translation>Was die Werkstatt zu diesem Fenster fragt</translation>
    </message>
    <message>
        <source>light</source>
        <translation>Licht</translation>
    </message>
    <message>
        <source>Light of this window</source>
        <translation>Licht dieses Fensters</translation>
    </message>
</context>
<context>
    <name>choices</name>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>%1, %2 in each</source>
        <translation>%1, je %2</translation>
    </message>
    <message>
        <source>%1 ×</source>
        <translation>%1-fach</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>%1: %2&#xa0;m</source>
        <translation>%1: %2 m</translation>
    </message>
    <message>
        <source>nothing can be cut</source>
        <translation>nichts zuzuschneiden</translation>
    </message>
    <message>
        <source>%1: no price</source>
        <translation>%1: kein Preis</translation>
    </message>
    <message>
        <source>%1 %2 each side</source>
        <translation>%1 %2 je Seite</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>Widths</source>
        <translation>Bahnen</translation>
    </message>
    <message>
        <source>Fullness</source>
        <translation>Stoffzugabe</translation>
    </message>
    <message>
        <source>Cloth</source>
        <translation>Stoff</translation>
    </message>
    <message>
        <source>Cloth, in money</source>
        <translation>Stoff, in Geld</translation>
    </message>
    <message>
        <source>Making, by the width</source>
        <translation>Nähen, nach Bahnen</translation>
    </message>
    <message>
        <source>Glass covered when open</source>
        <translation>Verdecktes Glas, offen</translation>
    </message>
    <message>
        <source>Weight</source>
        <translation>Gewicht</translation>
    </message>
</context>
<context>
    <name>devices</name>
    <message>
        <source>The file can’t be opened: %1</source>
        <translation>Die Datei lässt sich nicht öffnen: %1</translation>
    </message>
    <message>
        <source>The file is too large.</source>
        <translation>Die Datei ist zu groß.</translation>
    </message>
    <message>
        <source>The file can’t be written: %1</source>
        <translation>Die Datei lässt sich nicht schreiben: %1</translation>
    </message>
</context>
<context>
    <name>figures</name>
    <message>
        <source>Floor</source>
        <translation>Boden</translation>
    </message>
    <message>
        <source>Sill above the floor</source>
        <translation>Fensterbank über dem Boden</translation>
    </message>
    <message>
        <source>Head above the floor</source>
        <translation>Sturz über dem Boden</translation>
    </message>
    <message>
        <source>Pole centre above the floor</source>
        <translation>Stangenmitte über dem Boden</translation>
    </message>
    <message>
        <source>Ceiling above the floor</source>
        <translation>Decke über dem Boden</translation>
    </message>
    <message>
        <source>Level line above the floor</source>
        <translation>Meterriss über dem Boden</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>centre</source>
        <translation>Mitte</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>Shorter than planned by</source>
        <translation>Kürzer als geplant um</translation>
    </message>
    <message>
        <source>Longer than planned by</source>
        <translation>Länger als geplant um</translation>
    </message>
    <message>
        <source>Elbow joint %1, of %2°, from the left end</source>
        <translation>Gelenk %1, mit %2°, vom linken Ende</translation>
    </message>
    <message>
        <source>Bend %1, of %2°, from the left end</source>
        <translation>Bogen %1, mit %2°, vom linken Ende</translation>
    </message>
    <message>
        <source>Left curtain</source>
        <translation>Linker Vorhang</translation>
    </message>
    <message>
        <source>Right curtain</source>
        <translation>Rechter Vorhang</translation>
    </message>
    <message>
        <source>Curtain</source>
        <translation>Vorhang</translation>
    </message>
    <message>
        <source>drop at its left edge</source>
        <translation>Höhe an der linken Kante</translation>
    </message>
    <message>
        <source>longest drop, %1 across</source>
        <translation>größte Höhe, bei %1</translation>
    </message>
    <message>
        <source>drop at its right edge</source>
        <translation>Höhe an der rechten Kante</translation>
    </message>
    <message>
        <source>×</source>
        <translation>-fach</translation>
    </message>
    <message>
        <source>%1, for this window</source>
        <translation>%1, für dieses Fenster</translation>
    </message>
    <message>
        <source>Layer %1</source>
        <translation>Lage %1</translation>
    </message>
    <message>
        <source>%1, rests on a reading that wasn’t measured</source>
        <translation>%1, beruht auf einem nicht gemessenen Maß</translation>
    </message>
</context>
<context>
    <name>hardware</name>
    <message>
        <source>%1, %2 across</source>
        <translation>%1, Durchmesser %2</translation>
    </message>
    <message>
        <source>%1, %2 long</source>
        <translation>%1, %2 lang</translation>
    </message>
</context>
<context>
    <name>photos</name>
    <message>
        <source>The file is larger than 64 MB. Choose a smaller picture.</source>
        <translation>Die Datei ist größer als 64 MB. Wählen Sie ein kleineres Bild.</translation>
    </message>
    <message>
        <source>This isn’t a picture that can be read. Choose a JPEG or PNG.</source>
        <translation>Das ist kein lesbares Bild. Wählen Sie ein JPEG oder PNG.</translation>
    </message>
    <message>
        <source>The picture is damaged or cut short. Choose it again.</source>
        <translation>Das Bild ist beschädigt oder abgeschnitten. Wählen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>There is no picture to take in.</source>
        <translation>Es gibt kein Bild zu übernehmen.</translation>
    </message>
    <message>
        <source>The picture can’t be written as JPEG.</source>
        <translation>Das Bild lässt sich nicht als JPEG schreiben.</translation>
    </message>
    <message>
        <source>The picture has more pixels than can be opened here. Save a smaller copy of it and choose that.</source>
        <translation>Das Bild hat mehr Bildpunkte, als hier geöffnet werden können. Speichern Sie es kleiner und wählen Sie das.</translation>
    </message>
</context>
<context>
    <name>print</name>
    <message>
        <source>The file can’t be written.</source>
        <translation>Die Datei lässt sich nicht schreiben.</translation>
    </message>
    <message>
        <source>The survey has no window of this id.</source>
        <translation>Im Besuch gibt es kein Fenster mit dieser Kennung.</translation>
    </message>
    <message>
        <source>Nothing is worked yet that such a sheet could say.</source>
        <translation>Noch ist nichts berechnet, was auf so einem Blatt stehen könnte.</translation>
    </message>
</context>
<context>
    <name>state</name>
    <message>
        <source>this shape comes later</source>
        <translation>diese Form kommt später</translation>
    </message>
    <message>
        <source>to measure</source>
        <translation>zu messen</translation>
    </message>
    <message>
        <source>%1 of %2 stations</source>
        <translation>%1 von %2 Maßen</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>measuring, 1 window left</source>
        <translation>wird gemessen, noch 1 Fenster</translation>
    </message>
    <message>
        <source>measuring, %1 windows left</source>
        <translation>wird gemessen, noch %1 Fenster</translation>
    </message>
    <message>
        <source>measured, the workroom has an earlier state</source>
        <translation>gemessen, die Werkstatt hat einen früheren Stand</translation>
    </message>
    <message>
        <source>measured, on this phone only</source>
        <translation>gemessen, nur auf diesem Telefon</translation>
    </message>
    <message>
        <source>the workroom asks something</source>
        <translation>die Werkstatt fragt etwas</translation>
    </message>
    <message>
        <source>the workroom asks %1 things</source>
        <translation>die Werkstatt hat %1 Fragen</translation>
    </message>
    <message>
        <source>at the workroom, %1 of %2 photos</source>
        <translation>in der Werkstatt, %1 von %2 Fotos</translation>
    </message>
    <message>
        <source>at the workroom</source>
        <translation>in der Werkstatt</translation>
    </message>
</context>
<context>
    <name>trade</name>
    <message>
        <source>Class I</source>
        <translation>Klasse I</translation>
    </message>
    <message>
        <source>Class II</source>
        <translation>Klasse II</translation>
    </message>
    <message>
        <source>Class III</source>
        <translation>Klasse III</translation>
    </message>
    <message>
        <source>Face cloth</source>
        <translation>Oberstoff</translation>
    </message>
    <message>
        <source>Lining</source>
        <translation>Futter</translation>
    </message>
    <message>
        <source>Interlining</source>
        <translation>Zwischenfutter</translation>
    </message>
    <message>
        <source>Sheer</source>
        <translation>Store</translation>
    </message>
    <message>
        <source>No match</source>
        <translation>Kein Rapport</translation>
    </message>
    <message>
        <source>Straight match</source>
        <translation>Gerader Rapport</translation>
    </message>
    <message>
        <source>Half drop match</source>
        <translation>Halb versetzter Rapport</translation>
    </message>
    <message>
        <source>Recess</source>
        <translation>Nische</translation>
    </message>
    <message>
        <source>Frame on the wall</source>
        <translation>Rahmen auf der Wand</translation>
    </message>
    <message>
        <source>Door</source>
        <translation>Tür</translation>
    </message>
    <message>
        <source>Bay</source>
        <translation>Erker</translation>
    </message>
    <message>
        <source>Arch</source>
        <translation>Bogen</translation>
    </message>
    <message>
        <source>Gable</source>
        <translation>Giebel</translation>
    </message>
    <message>
        <source>Corner</source>
        <translation>Ecke</translation>
    </message>
    <message>
        <source>Radiator</source>
        <translation>Heizkörper</translation>
    </message>
    <message>
        <source>Sill board</source>
        <translation>Fensterbank</translation>
    </message>
    <message>
        <source>Switch</source>
        <translation>Schalter</translation>
    </message>
    <message>
        <source>Socket</source>
        <translation>Steckdose</translation>
    </message>
    <message>
        <source>Pipe</source>
        <translation>Rohr</translation>
    </message>
    <message>
        <source>Beam</source>
        <translation>Balken</translation>
    </message>
    <message>
        <source>Cornice</source>
        <translation>Gesims</translation>
    </message>
    <message>
        <source>Picture rail</source>
        <translation>Bilderleiste</translation>
    </message>
    <message>
        <source>Furniture</source>
        <translation>Möbel</translation>
    </message>
    <message>
        <source>Door swing</source>
        <translation>Türflügel, Schwenkbereich</translation>
    </message>
    <message>
        <source>Casement swing</source>
        <translation>Fensterflügel, Schwenkbereich</translation>
    </message>
    <message>
        <source>Handle</source>
        <translation>Griff</translation>
    </message>
    <message>
        <source>Vent</source>
        <translation>Lüftung</translation>
    </message>
    <message>
        <source>Alarm</source>
        <translation>Alarm</translation>
    </message>
    <message>
        <source>Shutter</source>
        <translation>Fensterladen</translation>
    </message>
    <message>
        <source>Bracket</source>
        <translation>Träger</translation>
    </message>
    <message>
        <source>Heater</source>
        <translation>Heizgerät</translation>
    </message>
    <message>
        <source>Fire</source>
        <translation>Feuerstelle</translation>
    </message>
    <message>
        <source>Something else</source>
        <translation>Etwas anderes</translation>
    </message>
    <message>
        <source>Pole</source>
        <translation>Stange</translation>
    </message>
    <message>
        <source>Track</source>
        <translation>Schiene</translation>
    </message>
    <message>
        <source>Wire</source>
        <translation>Seil</translation>
    </message>
    <message>
        <source>Headrail</source>
        <translation>Kopfleiste</translation>
    </message>
    <message>
        <source>There already</source>
        <translation>Schon vorhanden</translation>
    </message>
    <message>
        <source>We supply it</source>
        <translation>Wir liefern</translation>
    </message>
    <message>
        <source>Others supply it</source>
        <translation>Andere liefern</translation>
    </message>
    <message>
        <source>Level</source>
        <translation>Waagerecht</translation>
    </message>
    <message>
        <source>With the head</source>
        <translation>Wie der Sturz</translation>
    </message>
    <message>
        <source>With the ceiling</source>
        <translation>Wie die Decke</translation>
    </message>
    <message>
        <source>Bent round the corners</source>
        <translation>Um die Ecken gebogen</translation>
    </message>
    <message>
        <source>Straight across</source>
        <translation>Gerade durch</translation>
    </message>
    <message>
        <source>It is up: measure it again</source>
        <translation>Sie hängt: neu messen</translation>
    </message>
    <message>
        <source>Not up yet</source>
        <translation>Hängt noch nicht</translation>
    </message>
    <message>
        <source>Shaped to the window, fixed</source>
        <translation>Nach dem Fenster geformt, fest</translation>
    </message>
    <message>
        <source>Follows the floor or sill</source>
        <translation>Folgt Boden oder Fensterbank</translation>
    </message>
    <message>
        <source>Straight, one drop</source>
        <translation>Gerade, eine Höhe</translation>
    </message>
    <message>
        <source>Tab</source>
        <translation>Schlaufen</translation>
    </message>
    <message>
        <source>Eyelet</source>
        <translation>Ösen</translation>
    </message>
    <message>
        <source>Slot</source>
        <translation>Tunnel</translation>
    </message>
    <message>
        <source>Pencil pleat</source>
        <translation>Kräuselband</translation>
    </message>
    <message>
        <source>Pinch pleat</source>
        <translation>Faltenband</translation>
    </message>
    <message>
        <source>Goblet</source>
        <translation>Kelchfalten</translation>
    </message>
    <message>
        <source>Box pleat</source>
        <translation>Kellerfalten</translation>
    </message>
    <message>
        <source>S-fold</source>
        <translation>Wellenfalten</translation>
    </message>
    <message>
        <source>Roman blind</source>
        <translation>Raffrollo</translation>
    </message>
    <message>
        <source>Inside the recess</source>
        <translation>In der Nische</translation>
    </message>
    <message>
        <source>Outside the recess</source>
        <translation>Vor der Nische</translation>
    </message>
    <message>
        <source>A pair</source>
        <translation>Ein Paar</translation>
    </message>
    <message>
        <source>A single curtain</source>
        <translation>Ein einzelner Vorhang</translation>
    </message>
    <message>
        <source>One, drawn to the left</source>
        <translation>Einer, nach links gezogen</translation>
    </message>
    <message>
        <source>One, drawn to the right</source>
        <translation>Einer, nach rechts gezogen</translation>
    </message>
    <message>
        <source>To the floor</source>
        <translation>Bis zum Boden</translation>
    </message>
    <message>
        <source>To the sill</source>
        <translation>Bis zur Fensterbank</translation>
    </message>
    <message>
        <source>Below the sill</source>
        <translation>Bis unter die Fensterbank</translation>
    </message>
    <message>
        <source>Breaking on the floor</source>
        <translation>Stößt auf dem Boden auf</translation>
    </message>
    <message>
        <source>Puddled on the floor</source>
        <translation>Liegt auf dem Boden auf</translation>
    </message>
    <message>
        <source>To a given height</source>
        <translation>Bis zu gegebener Höhe</translation>
    </message>
    <message>
        <source>Sewn in</source>
        <translation>Eingenäht</translation>
    </message>
    <message>
        <source>On its own tape</source>
        <translation>An eigenem Band</translation>
    </message>
    <message>
        <source>A cord</source>
        <translation>Eine Schnur</translation>
    </message>
    <message>
        <source>A chain loop</source>
        <translation>Eine Kettenschlaufe</translation>
    </message>
    <message>
        <source>A wand</source>
        <translation>Ein Schleuderstab</translation>
    </message>
    <message>
        <source>By hand, no cord</source>
        <translation>Von Hand, ohne Schnur</translation>
    </message>
    <message>
        <source>A motor</source>
        <translation>Ein Motor</translation>
    </message>
    <message>
        <source>Tie-backs</source>
        <translation>Raffhalter</translation>
    </message>
    <message>
        <source>Holdbacks</source>
        <translation>Raffbügel</translation>
    </message>
    <message>
        <source>Steel</source>
        <translation>Stahl</translation>
    </message>
    <message>
        <source>Chain</source>
        <translation>Kette</translation>
    </message>
    <message>
        <source>Lead</source>
        <translation>Blei</translation>
    </message>
    <message>
        <source>Millimetres</source>
        <translation>Millimeter</translation>
    </message>
    <message>
        <source>Centimetres</source>
        <translation>Zentimeter</translation>
    </message>
    <message>
        <source>Metres</source>
        <translation>Meter</translation>
    </message>
    <message>
        <source>Inches</source>
        <translation>Zoll</translation>
    </message>
    <message>
        <source>set back in the wall</source>
        <translation>in die Wand zurückgesetzt</translation>
    </message>
    <message>
        <source>no recess: the frame ends flat with the wall or stands out</source>
        <translation>ohne Nische: Der Rahmen liegt bündig mit der Wand oder steht vor</translation>
    </message>
    <message>
        <source>no sill: it goes down to the floor</source>
        <translation>ohne Fensterbank: Sie reicht bis zum Boden</translation>
    </message>
    <message>
        <source>built out, in several parts at angles</source>
        <translation>vorgebaut, mehrere Teile im Winkel zueinander</translation>
    </message>
    <message>
        <source>round or pointed at the head</source>
        <translation>oben rund oder spitz</translation>
    </message>
    <message>
        <source>the head slopes with the roof</source>
        <translation>der Sturz folgt der Dachschräge</translation>
    </message>
    <message>
        <source>two windows that meet in a corner of the room</source>
        <translation>zwei Fenster, die in einer Ecke des Raums zusammenstoßen</translation>
    </message>
    <message>
        <source>Side to side of the recess, not the glass</source>
        <translation>Von Laibung zu Laibung, nicht das Glas</translation>
    </message>
    <message>
        <source>Outer edges of the frame, not the glass</source>
        <translation>Außenkanten des Rahmens, nicht das Glas</translation>
    </message>
    <message>
        <source>House</source>
        <translation>Haus</translation>
    </message>
    <message>
        <source>Tree</source>
        <translation>Baum</translation>
    </message>
    <message>
        <source>Hill</source>
        <translation>Hügel</translation>
    </message>
    <message>
        <source>Wall</source>
        <translation>Mauer</translation>
    </message>
    <message>
        <source>Light walls and floor</source>
        <translation>Helle Wände und heller Boden</translation>
    </message>
    <message>
        <source>Middling</source>
        <translation>Mittel</translation>
    </message>
    <message>
        <source>Dark walls and floor</source>
        <translation>Dunkle Wände und dunkler Boden</translation>
    </message>
    <message>
        <source>To the left of the line</source>
        <translation>Links der Linie</translation>
    </message>
    <message>
        <source>To the right of the line</source>
        <translation>Rechts der Linie</translation>
    </message>
</context>
<context>
    <name>truehang::AgreementModel</name>
    <message>
        <source>Agreed by %1, %2</source>
        <translation>Zugestimmt: %1, %2</translation>
    </message>
    <message>
        <source>%1. It no longer covers %2</source>
        <translation>%1. Sie gilt nicht mehr für %2</translation>
    </message>
    <message>
        <source>This window was taken out after the signing.</source>
        <translation>Dieses Fenster wurde nach der Unterschrift herausgenommen.</translation>
    </message>
    <message>
        <source>each %1 wide, %2 long</source>
        <translation>je %1 breit, %2 lang</translation>
    </message>
    <message>
        <source>%1 wide, %2 long</source>
        <translation>%1 breit, %2 lang</translation>
    </message>
    <message>
        <source>%1: %2&#xa0;m</source>
        <translation>%1: %2 m</translation>
    </message>
    <message>
        <source>Cloth in all: %1. %2</source>
        <translation>Stoff insgesamt: %1. %2</translation>
    </message>
    <message>
        <source>What is written down as agreed isn’t what was signed. Have it signed again.</source>
        <translation>Was als vereinbart notiert ist, ist nicht, was unterschrieben wurde. Lassen Sie es noch einmal unterschreiben.</translation>
    </message>
    <message>
        <source>Type the name of the one who agrees.</source>
        <translation>Tippen Sie den Namen dessen ein, der zustimmt.</translation>
    </message>
    <message>
        <source>There is nothing to agree yet.</source>
        <translation>Es gibt noch nichts zu vereinbaren.</translation>
    </message>
    <message>
        <source>Agreed by %1</source>
        <translation>Zugestimmt: %1</translation>
    </message>
    <message>
        <source>Agreement taken back</source>
        <translation>Zustimmung zurückgenommen</translation>
    </message>
</context>
<context>
    <name>truehang::BearingsModel</name>
    <message>
        <source>Timed at %1</source>
        <translation>Zeit genommen um %1</translation>
    </message>
    <message>
        <source>The compass hasn’t told anything yet.</source>
        <translation>Der Kompass hat noch nichts gesagt.</translation>
    </message>
    <message>
        <source>Which way it faces</source>
        <translation>Wohin es schaut</translation>
    </message>
    <message>
        <source>The shadow’s time</source>
        <translation>Die Zeit des Schattens</translation>
    </message>
    <message>
        <source>A bearing taken out</source>
        <translation>Eine Richtung herausgenommen</translation>
    </message>
    <message>
        <source>It doesn’t agree with the others.</source>
        <translation>Sie passt nicht zu den anderen.</translation>
    </message>
    <message>
        <source>Into the room, from the edge’s foot to the mark</source>
        <translation>In den Raum hinein, vom Fuß der Kante bis zum Strich</translation>
    </message>
    <message>
        <source>There, how far the shadow lies to the left</source>
        <translation>Dort, wie weit der Schatten links liegt</translation>
    </message>
    <message>
        <source>with a minus: to the right</source>
        <translation>mit Minus: rechts</translation>
    </message>
    <message>
        <source>The bar’s other edge, to the left of its own foot</source>
        <translation>Die andere Kante der Sprosse, links von ihrem eigenen Fuß</translation>
    </message>
    <message>
        <source>better with it</source>
        <translation>besser damit</translation>
    </message>
    <message>
        <source>The street’s line</source>
        <translation>Der Verlauf der Straße</translation>
    </message>
    <message>
        <source>clockwise from north</source>
        <translation>von Norden im Uhrzeigersinn</translation>
    </message>
    <message>
        <source>The window looks</source>
        <translation>Das Fenster schaut</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>nicht gesagt</translation>
    </message>
    <message>
        <source>Or straight out of the window</source>
        <translation>Oder gerade aus dem Fenster</translation>
    </message>
    <message>
        <source>from the street’s line</source>
        <translation>aus dem Verlauf der Straße</translation>
    </message>
    <message>
        <source>Which way it faces: %1</source>
        <translation>Wohin es schaut: %1</translation>
    </message>
</context>
<context>
    <name>truehang::ChoicesModel</name>
    <message>
        <source>%1 × fullness</source>
        <translation>%1-fache Stoffzugabe</translation>
    </message>
    <message>
        <source>Unlined</source>
        <translation>Ungefüttert</translation>
    </message>
    <message>
        <source>Lined with %1</source>
        <translation>Gefüttert mit %1</translation>
    </message>
    <message>
        <source>Hardware %1 %2 long</source>
        <translation>Aufhängung %1 %2 lang</translation>
    </message>
    <message>
        <source>Nothing changed yet</source>
        <translation>Noch nichts geändert</translation>
    </message>
    <message>
        <source>Choice %1</source>
        <translation>Möglichkeit %1</translation>
    </message>
    <message>
        <source>On the edge</source>
        <translation>Auf der Kante</translation>
    </message>
    <message>
        <source>As it hangs now</source>
        <translation>Wie es jetzt hängt</translation>
    </message>
    <message>
        <source>as it hangs now</source>
        <translation>wie es jetzt hängt</translation>
    </message>
    <message>
        <source>Heading</source>
        <translation>Kopf</translation>
    </message>
    <message>
        <source>Fullness</source>
        <translation>Stoffzugabe</translation>
    </message>
    <message>
        <source>×</source>
        <translation>-fach</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Face cloth</source>
        <translation>Oberstoff</translation>
    </message>
    <message>
        <source>Lining</source>
        <translation>Futter</translation>
    </message>
    <message>
        <source>Hardware length, without finials</source>
        <translation>Länge der Aufhängung, ohne Endstücke</translation>
    </message>
    <message>
        <source>Hung as chosen: %1</source>
        <translation>Wie gewählt aufgehängt: %1</translation>
    </message>
    <message>
        <source>Decided: %1</source>
        <translation>Entschieden: %1</translation>
    </message>
</context>
<context>
    <name>truehang::ClientModel</name>
    <message>
        <source>%1, shown now</source>
        <translation>%1, jetzt gezeigt</translation>
    </message>
    <message>
        <source>Draw the blind up</source>
        <translation>Das Rollo aufziehen</translation>
    </message>
    <message>
        <source>Let the blind down</source>
        <translation>Das Rollo herablassen</translation>
    </message>
    <message>
        <source>Open the curtain</source>
        <translation>Den Vorhang öffnen</translation>
    </message>
    <message>
        <source>Open the curtains</source>
        <translation>Die Vorhänge öffnen</translation>
    </message>
    <message>
        <source>Close the curtain</source>
        <translation>Den Vorhang schließen</translation>
    </message>
    <message>
        <source>Close the curtains</source>
        <translation>Die Vorhänge schließen</translation>
    </message>
</context>
<context>
    <name>truehang::FabricsModel</name>
    <message>
        <source>The width must be more than twice the selvedge: cloth must be left between.</source>
        <translation>Die Breite muss mehr als zweimal die Webkante sein: Dazwischen muss Stoff bleiben.</translation>
    </message>
    <message>
        <source>Cloth without a name</source>
        <translation>Stoff ohne Namen</translation>
    </message>
    <message>
        <source>%1 wide</source>
        <translation>%1 breit</translation>
    </message>
    <message>
        <source>%1, repeat %2</source>
        <translation>%1, Rapport %2</translation>
    </message>
    <message>
        <source>%1, runs one way</source>
        <translation>%1, läuft in eine Richtung</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Role</source>
        <translation>Verwendung</translation>
    </message>
    <message>
        <source>Width of the roll</source>
        <translation>Breite der Rolle</translation>
    </message>
    <message>
        <source>Selvedge, each side</source>
        <translation>Webkante, je Seite</translation>
    </message>
    <message>
        <source>Pattern repeat, along the roll</source>
        <translation>Rapport, längs der Rolle</translation>
    </message>
    <message>
        <source>Match</source>
        <translation>Ansatz</translation>
    </message>
    <message>
        <source>No match</source>
        <translation>Kein Rapport</translation>
    </message>
    <message>
        <source>Its design or nap</source>
        <translation>Muster oder Strich</translation>
    </message>
    <message>
        <source>No way up, or not said</source>
        <translation>Ohne Richtung, oder nicht gesagt</translation>
    </message>
    <message>
        <source>Runs one way: all pieces top to top</source>
        <translation>Läuft in eine Richtung: alle Teile gleich herum</translation>
    </message>
    <message>
        <source>Mass</source>
        <translation>Gewicht</translation>
    </message>
    <message>
        <source>g/m²</source>
        <translation>g/m²</translation>
    </message>
    <message>
        <source>Shrinkage</source>
        <translation>Einlaufen</translation>
    </message>
    <message>
        <source>%</source>
        <translation>%</translation>
    </message>
    <message>
        <source>Cloth: %1</source>
        <translation>Stoff: %1</translation>
    </message>
    <message>
        <source>A new cloth</source>
        <translation>Ein neuer Stoff</translation>
    </message>
    <message>
        <source>It hangs at %1. Choose another cloth there first.</source>
        <translation>Er hängt an %1. Wählen Sie dort erst einen anderen Stoff.</translation>
    </message>
    <message>
        <source>A cloth taken out</source>
        <translation>Ein Stoff entfernt</translation>
    </message>
    <message>
        <source>Six digits 0 to 9 and a to f are understood, as #8f2f2f: two each for red, green and blue.</source>
        <translation>Verstanden werden sechs Stellen 0 bis 9 und a bis f, etwa #8f2f2f: je zwei für Rot, Grün und Blau.</translation>
    </message>
    <message>
        <source>Its colour, to draw it with</source>
        <translation>Seine Farbe, um ihn zu zeichnen</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>nicht gesagt</translation>
    </message>
    <message>
        <source>Or its colour as red, green and blue</source>
        <translation>Oder seine Farbe als Rot, Grün und Blau</translation>
    </message>
    <message>
        <source>as #8f2f2f</source>
        <translation>etwa #8f2f2f</translation>
    </message>
</context>
<context>
    <name>truehang::FiguresModel</name>
    <message>
        <source>Nothing hangs here yet</source>
        <translation>Hier hängt noch nichts</translation>
    </message>
    <message>
        <source>Measure again: %1</source>
        <translation>Noch einmal messen: %1</translation>
    </message>
    <message>
        <source>Measure %1</source>
        <translation>%1 messen</translation>
    </message>
    <message>
        <source>± is twice the standard uncertainty</source>
        <translation>± ist die doppelte Standardunsicherheit</translation>
    </message>
</context>
<context>
    <name>truehang::HangingModel</name>
    <message>
        <source>Nothing hangs here yet</source>
        <translation>Hier hängt noch nichts</translation>
    </message>
    <message>
        <source>What hangs here</source>
        <translation>Was hier hängt</translation>
    </message>
    <message>
        <source>Layer 1, nearest the glass</source>
        <translation>Lage 1, dem Glas am nächsten</translation>
    </message>
    <message>
        <source>Layer %1, nearest the room</source>
        <translation>Lage %1, dem Raum am nächsten</translation>
    </message>
    <message>
        <source>Layer %1</source>
        <translation>Lage %1</translation>
    </message>
    <message>
        <source>Wall to its centre line</source>
        <translation>Wand bis Mittellinie</translation>
    </message>
    <message>
        <source>Hangs from</source>
        <translation>Hängt an</translation>
    </message>
    <message>
        <source>Pole</source>
        <translation>Stange</translation>
    </message>
    <message>
        <source>Supply</source>
        <translation>Lieferung</translation>
    </message>
    <message>
        <source>Runs</source>
        <translation>Verläuft</translation>
    </message>
    <message>
        <source>Level</source>
        <translation>Waagerecht</translation>
    </message>
    <message>
        <source>Diameter</source>
        <translation>Durchmesser</translation>
    </message>
    <message>
        <source>Length, without finials</source>
        <translation>Länge, ohne Endstücke</translation>
    </message>
    <message>
        <source>centred</source>
        <translation>mittig</translation>
    </message>
    <message>
        <source>Finial, each end</source>
        <translation>Endstück, je Seite</translation>
    </message>
    <message>
        <source>Brackets</source>
        <translation>Träger</translation>
    </message>
    <message>
        <source>Return, each end</source>
        <translation>Retoure, je Seite</translation>
    </message>
    <message>
        <source>Overlap, in all</source>
        <translation>Übertritt, insgesamt</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>Its own mass</source>
        <translation>Eigengewicht</translation>
    </message>
    <message>
        <source>kg</source>
        <translation>kg</translation>
    </message>
    <message>
        <source>not known: weigh it</source>
        <translation>nicht bekannt: wiegen</translation>
    </message>
    <message>
        <source>Its maker says it carries</source>
        <translation>Trägt laut Hersteller</translation>
    </message>
    <message>
        <source>A bracket’s maker says it carries</source>
        <translation>Ein Träger trägt laut Hersteller</translation>
    </message>
    <message>
        <source>A bracket’s fixings hold in this wall</source>
        <translation>Eine Befestigung hält in dieser Wand</translation>
    </message>
    <message>
        <source>Round the corners</source>
        <translation>Um die Ecken</translation>
    </message>
    <message>
        <source>Straight across</source>
        <translation>Gerade durch</translation>
    </message>
    <message>
        <source>Is it up?</source>
        <translation>Hängt sie schon?</translation>
    </message>
    <message>
        <source>Not up yet</source>
        <translation>Hängt noch nicht</translation>
    </message>
    <message>
        <source>Top</source>
        <translation>Oberkante</translation>
    </message>
    <message>
        <source>Hem</source>
        <translation>Saum</translation>
    </message>
    <message>
        <source>Straight, one drop</source>
        <translation>Gerade, eine Höhe</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Keiner</translation>
    </message>
    <message>
        <source>Heading</source>
        <translation>Kopf</translation>
    </message>
    <message>
        <source>Fit</source>
        <translation>Sitz</translation>
    </message>
    <message>
        <source>Inside the recess</source>
        <translation>In der Nische</translation>
    </message>
    <message>
        <source>Layout</source>
        <translation>Aufteilung</translation>
    </message>
    <message>
        <source>A pair</source>
        <translation>Ein Paar</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>To the floor</source>
        <translation>Bis zum Boden</translation>
    </message>
    <message>
        <source>Hem above the floor</source>
        <translation>Saum über dem Boden</translation>
    </message>
    <message>
        <source>Fullness</source>
        <translation>Stoffzugabe</translation>
    </message>
    <message>
        <source>×</source>
        <translation>-fach</translation>
    </message>
    <message>
        <source>Face cloth</source>
        <translation>Oberstoff</translation>
    </message>
    <message>
        <source>Tab, cut length</source>
        <translation>Schlaufe, Zuschnittlänge</translation>
    </message>
    <message>
        <source>by the house rules</source>
        <translation>nach den Hausregeln</translation>
    </message>
    <message>
        <source>Not said: counts as a cord</source>
        <translation>Nicht gesagt: zählt als Schnur</translation>
    </message>
    <message>
        <source>By hand</source>
        <translation>Von Hand</translation>
    </message>
    <message>
        <source>Moved by</source>
        <translation>Bedient mit</translation>
    </message>
    <message>
        <source>Corner weights</source>
        <translation>Eckgewichte</translation>
    </message>
    <message>
        <source>Steel or chain</source>
        <translation>Stahl oder Kette</translation>
    </message>
    <message>
        <source>Lining</source>
        <translation>Futter</translation>
    </message>
    <message>
        <source>Second lining</source>
        <translation>Zweites Futter</translation>
    </message>
    <message>
        <source>Lining hangs</source>
        <translation>Das Futter hängt</translation>
    </message>
    <message>
        <source>Sewn in</source>
        <translation>Eingenäht</translation>
    </message>
    <message>
        <source>Interlining</source>
        <translation>Zwischenfutter</translation>
    </message>
    <message>
        <source>Held back by</source>
        <translation>Gerafft mit</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>Nothing</source>
        <translation>Nichts</translation>
    </message>
    <message>
        <source>Height above the floor</source>
        <translation>Höhe über dem Boden</translation>
    </message>
    <message>
        <source>two thirds down</source>
        <translation>auf zwei Dritteln</translation>
    </message>
    <message>
        <source>Tie-back length</source>
        <translation>Länge des Raffhalters</translation>
    </message>
    <message>
        <source>round the drawn-back curtain</source>
        <translation>um den gerafften Vorhang</translation>
    </message>
    <message>
        <source>Pelmet</source>
        <translation>Schabracke</translation>
    </message>
    <message>
        <source>With a pelmet</source>
        <translation>Mit Schabracke</translation>
    </message>
    <message>
        <source>Pelmet depth</source>
        <translation>Höhe der Schabracke</translation>
    </message>
    <message>
        <source>Pelmet return, each end</source>
        <translation>Retoure der Schabracke, je Seite</translation>
    </message>
    <message>
        <source>Hardware: %1</source>
        <translation>Aufhängung: %1</translation>
    </message>
    <message>
        <source>Treatment: %1</source>
        <translation>Dekoration: %1</translation>
    </message>
    <message>
        <source>A layer more</source>
        <translation>Eine Lage mehr</translation>
    </message>
    <message>
        <source>A layer taken out</source>
        <translation>Eine Lage entfernt</translation>
    </message>
    <message>
        <source>From your list</source>
        <translation>Aus Ihrer Liste</translation>
    </message>
    <message>
        <source>What it is called</source>
        <translation>Wie sie heißt</translation>
    </message>
    <message>
        <source>As at %1</source>
        <translation>Wie bei %1</translation>
    </message>
    <message>
        <source>Hung as at %1</source>
        <translation>Gehängt wie bei %1</translation>
    </message>
    <message>
        <source>Left end, from the opening’s left edge</source>
        <translation>Linkes Ende, von der linken Kante der Öffnung</translation>
    </message>
    <message>
        <source>the heading’s own</source>
        <translation>die des Kopfes</translation>
    </message>
</context>
<context>
    <name>truehang::KeptLists</name>
    <message>
        <source>Your lists can’t be opened: %1</source>
        <translation>Ihre Listen lassen sich nicht öffnen: %1</translation>
    </message>
    <message>
        <source>Your lists can’t be read, and stay as they are in %1: %2: %3</source>
        <translation>Ihre Listen lassen sich nicht lesen und bleiben, wie sie sind, in %1: %2: %3</translation>
    </message>
    <message>
        <source>Your lists can’t be written, and stay as they were: %1</source>
        <translation>Ihre Listen lassen sich nicht schreiben und bleiben, wie sie waren: %1</translation>
    </message>
</context>
<context>
    <name>truehang::LeavingModel</name>
    <message>
        <source>Nothing is missing, and everything adds up.</source>
        <translation>Nichts fehlt, und alles passt zusammen.</translation>
    </message>
    <message>
        <source>One thing is left.</source>
        <translation>Eines ist noch offen.</translation>
    </message>
    <message>
        <source>%1 things are left.</source>
        <translation>%1 Dinge sind noch offen.</translation>
    </message>
    <message>
        <source>The visit</source>
        <translation>Der Besuch</translation>
    </message>
    <message>
        <source>%1. Take it, or say why it can’t be taken.</source>
        <translation>%1. Nehmen Sie es, oder sagen Sie, warum es nicht geht.</translation>
    </message>
    <message>
        <source>%1 stations, the first: %2. Take each, or say why it can’t be taken.</source>
        <translation>%1 Maße, das erste: %2. Nehmen Sie jedes, oder sagen Sie, warum es nicht geht.</translation>
    </message>
    <message>
        <source>To measure</source>
        <translation>Zu messen</translation>
    </message>
    <message>
        <source>No photo</source>
        <translation>Kein Foto</translation>
    </message>
    <message>
        <source>A photo shows what no reading says.</source>
        <translation>Ein Foto zeigt, was kein Maß sagt.</translation>
    </message>
    <message>
        <source>No window</source>
        <translation>Kein Fenster</translation>
    </message>
    <message>
        <source>This visit has no window yet.</source>
        <translation>Dieser Besuch hat noch kein Fenster.</translation>
    </message>
    <message>
        <source>The workroom hasn’t confirmed this visit: it stands on this phone alone.</source>
        <translation>Die Werkstatt hat diesen Besuch nicht bestätigt: Er steht nur auf diesem Telefon.</translation>
    </message>
    <message>
        <source>Not sent</source>
        <translation>Nicht gesendet</translation>
    </message>
    <message>
        <source>Not signed</source>
        <translation>Nicht unterschrieben</translation>
    </message>
    <message>
        <source>The client hasn’t agreed yet.</source>
        <translation>Die Kundschaft hat noch nicht zugestimmt.</translation>
    </message>
    <message>
        <source>Signed, and gone</source>
        <translation>Unterschrieben, und fort</translation>
    </message>
    <message>
        <source>%1 was taken out after the signing.</source>
        <translation>%1 wurde nach der Unterschrift herausgenommen.</translation>
    </message>
    <message>
        <source>%1 of %2 photos are at the workroom.</source>
        <translation>%1 von %2 Fotos sind in der Werkstatt.</translation>
    </message>
</context>
<context>
    <name>truehang::ListsModel</name>
    <message>
        <source>%1 wide</source>
        <translation>%1 breit</translation>
    </message>
    <message>
        <source>%1, repeat %2</source>
        <translation>%1, Rapport %2</translation>
    </message>
    <message>
        <source>version %1</source>
        <translation>Fassung %1</translation>
    </message>
    <message>
        <source>Cloth without a name</source>
        <translation>Stoff ohne Namen</translation>
    </message>
    <message>
        <source>Cloths</source>
        <translation>Stoffe</translation>
    </message>
    <message>
        <source>Hardware</source>
        <translation>Stangen und Schienen</translation>
    </message>
    <message>
        <source>House rules</source>
        <translation>Hausregeln</translation>
    </message>
    <message>
        <source>Taken out</source>
        <translation>Herausgenommen</translation>
    </message>
    <message>
        <source>In your list: %1</source>
        <translation>In Ihrer Liste: %1</translation>
    </message>
    <message>
        <source>House rules of %1</source>
        <translation>Hausregeln von %1</translation>
    </message>
    <message>
        <source>A cloth from your list: %1</source>
        <translation>Stoff aus Ihrer Liste: %1</translation>
    </message>
    <message>
        <source>House rules from your list: %1</source>
        <translation>Hausregeln aus Ihrer Liste: %1</translation>
    </message>
</context>
<context>
    <name>truehang::MarksModel</name>
    <message>
        <source>Arrow</source>
        <translation>Pfeil</translation>
    </message>
    <message>
        <source>Line</source>
        <translation>Linie</translation>
    </message>
    <message>
        <source>Words</source>
        <translation>Worte</translation>
    </message>
    <message>
        <source>Station</source>
        <translation>Maß</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>A mark on a photo</source>
        <translation>Markierung auf einem Foto</translation>
    </message>
    <message>
        <source>Draw from one end to the other; an arrow points where the finger lifts.</source>
        <translation>Ziehen Sie von einem Ende zum anderen; ein Pfeil zeigt dorthin, wo der Finger loslässt.</translation>
    </message>
    <message>
        <source>Write the words first, then touch where they go.</source>
        <translation>Schreiben Sie erst die Worte und tippen dann auf die Stelle.</translation>
    </message>
    <message>
        <source>A mark’s words: %1</source>
        <translation>Worte einer Markierung: %1</translation>
    </message>
    <message>
        <source>A mark taken off</source>
        <translation>Markierung entfernt</translation>
    </message>
    <message>
        <source>A mark moved</source>
        <translation>Markierung verschoben</translation>
    </message>
</context>
<context>
    <name>truehang::Notebook</name>
    <message>
        <source>A new visit</source>
        <translation>Ein neuer Besuch</translation>
    </message>
</context>
<context>
    <name>truehang::ObstructionPlacing</name>
    <message>
        <source>Something</source>
        <translation>Etwas</translation>
    </message>
    <message>
        <source>%1 moved</source>
        <translation>%1 verschoben</translation>
    </message>
</context>
<context>
    <name>truehang::ObstructionsModel</name>
    <message>
        <source>Something</source>
        <translation>Etwas</translation>
    </message>
    <message>
        <source>%1 from the left edge</source>
        <translation>%1 von der linken Kante</translation>
    </message>
    <message>
        <source>%1 wide</source>
        <translation>%1 breit</translation>
    </message>
    <message>
        <source>%1 above the floor</source>
        <translation>%1 über dem Boden</translation>
    </message>
    <message>
        <source>%1 high</source>
        <translation>%1 hoch</translation>
    </message>
    <message>
        <source>%1 out from the wall</source>
        <translation>%1 vor der Wand</translation>
    </message>
    <message>
        <source>not measured yet</source>
        <translation>noch nicht gemessen</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Was es ist</translation>
    </message>
    <message>
        <source>with a minus: to the left of it</source>
        <translation>mit Minus: links davon</translation>
    </message>
    <message>
        <source>Width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>Lower edge above the floor</source>
        <translation>Unterkante über dem Boden</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Out from the wall</source>
        <translation>Steht vor der Wand</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Hinweis</translation>
    </message>
    <message>
        <source>In the way: %1</source>
        <translation>Im Weg: %1</translation>
    </message>
    <message>
        <source>No longer in the way</source>
        <translation>Nicht mehr im Weg</translation>
    </message>
    <message>
        <source>%1 from the left edge, %2 above the floor</source>
        <translation>%1 von der linken Kante, %2 über dem Boden</translation>
    </message>
    <message>
        <source>From the opening’s left edge</source>
        <translation>Von der linken Kante der Öffnung</translation>
    </message>
</context>
<context>
    <name>truehang::OpenVisit</name>
    <message>
        <source>What the workroom has of this visit can’t be read.</source>
        <translation>Was die Werkstatt von diesem Besuch hat, ist nicht lesbar.</translation>
    </message>
    <message>
        <source>The two can’t be put together: %1</source>
        <translation>Beides lässt sich nicht zusammenführen: %1</translation>
    </message>
    <message>
        <source>The visit was closed meanwhile.</source>
        <translation>Der Besuch wurde inzwischen geschlossen.</translation>
    </message>
    <message>
        <source>“%1” wasn’t kept: the visit was closed while an undo was on its way. Do it again.</source>
        <translation>„%1“ wurde nicht behalten: der Besuch wurde geschlossen, während etwas rückgängig gemacht wurde. Bitte noch einmal.</translation>
    </message>
</context>
<context>
    <name>truehang::OutlookModel</name>
    <message>
        <source>%1: %2 hours on the glass</source>
        <translation>%1: %2 Stunden auf dem Glas</translation>
    </message>
    <message>
        <source>%1: %2 hours on the glass, %3 on the cloth</source>
        <translation>%1: %2 Stunden auf dem Glas, %3 auf dem Stoff</translation>
    </message>
    <message>
        <source>Width of the glass</source>
        <translation>Breite des Glases</translation>
    </message>
    <message>
        <source>the opening’s, but for its frame</source>
        <translation>die der Öffnung, bis auf den Rahmen</translation>
    </message>
    <message>
        <source>Height of the glass</source>
        <translation>Höhe des Glases</translation>
    </message>
    <message>
        <source>How far it stands back outside</source>
        <translation>Wie weit es außen zurücksteht</translation>
    </message>
    <message>
        <source>Width, along this wall</source>
        <translation>Breite, an dieser Wand entlang</translation>
    </message>
    <message>
        <source>Depth, away from it</source>
        <translation>Tiefe, von ihr weg</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Its surfaces</source>
        <translation>Seine Flächen</translation>
    </message>
    <message>
        <source>The glass: %1</source>
        <translation>Das Glas: %1</translation>
    </message>
    <message>
        <source>The room: %1</source>
        <translation>Der Raum: %1</translation>
    </message>
    <message>
        <source>The room’s surfaces</source>
        <translation>Die Flächen des Raums</translation>
    </message>
    <message>
        <source>Or its latitude and longitude, off a map</source>
        <translation>Oder seine Breite und Länge, von einer Karte</translation>
    </message>
    <message>
        <source>as 54.6, -1.1</source>
        <translation>wie 54.6, -1.1</translation>
    </message>
    <message>
        <source>Where the house stands: %1</source>
        <translation>Wo das Haus steht: %1</translation>
    </message>
</context>
<context>
    <name>truehang::PhotoTapeModel</name>
    <message>
        <source>The opening</source>
        <translation>Die Öffnung</translation>
    </message>
    <message>
        <source>The sheet</source>
        <translation>Das Blatt</translation>
    </message>
    <message>
        <source>Sheet %1</source>
        <translation>Blatt %1</translation>
    </message>
    <message>
        <source>%1, top left</source>
        <translation>%1, links oben</translation>
    </message>
    <message>
        <source>%1, top right</source>
        <translation>%1, rechts oben</translation>
    </message>
    <message>
        <source>%1, bottom right</source>
        <translation>%1, rechts unten</translation>
    </message>
    <message>
        <source>%1, bottom left</source>
        <translation>%1, links unten</translation>
    </message>
    <message>
        <source>%1: not tapped yet</source>
        <translation>%1: noch nicht angetippt</translation>
    </message>
    <message>
        <source>%1: tapped once</source>
        <translation>%1: einmal angetippt</translation>
    </message>
    <message>
        <source>%1: tapped %2 times</source>
        <translation>%1: %2-mal angetippt</translation>
    </message>
    <message>
        <source>tape: %1</source>
        <translation>Bandmaß: %1</translation>
    </message>
    <message>
        <source>A corner on a photo: %1</source>
        <translation>Ecke auf einem Foto: %1</translation>
    </message>
    <message>
        <source>Taps taken back: %1</source>
        <translation>Antippen zurückgenommen: %1</translation>
    </message>
    <message>
        <source>The sheet is A4</source>
        <translation>Das Blatt ist A4</translation>
    </message>
    <message>
        <source>The sheet is Letter</source>
        <translation>Das Blatt ist Letter</translation>
    </message>
    <message>
        <source>The sheet lies the other way</source>
        <translation>Das Blatt liegt andersherum</translation>
    </message>
    <message>
        <source>Say how long it is.</source>
        <translation>Geben Sie die Länge an.</translation>
    </message>
    <message>
        <source>The sheet’s size: %1</source>
        <translation>Größe des Blatts: %1</translation>
    </message>
    <message>
        <source>One more sheet on a photo</source>
        <translation>Noch ein Blatt auf einem Foto</translation>
    </message>
    <message>
        <source>A photo is no tape</source>
        <translation>Ein Foto ist kein Bandmaß</translation>
    </message>
</context>
<context>
    <name>truehang::PhotosModel</name>
    <message>
        <source>on this phone</source>
        <translation>auf diesem Telefon</translation>
    </message>
    <message>
        <source>Photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>A photo</source>
        <translation>Ein Foto</translation>
    </message>
    <message>
        <source>This photo is here already.</source>
        <translation>Dieses Foto ist schon da.</translation>
    </message>
    <message>
        <source>Caption: %1</source>
        <translation>Bildtext: %1</translation>
    </message>
    <message>
        <source>A photo taken off</source>
        <translation>Ein Foto entfernt</translation>
    </message>
    <message>
        <source>1 mark</source>
        <translation>1 Markierung</translation>
    </message>
    <message>
        <source>%1 marks</source>
        <translation>%1 Markierungen</translation>
    </message>
    <message>
        <source>the window</source>
        <translation>das Fenster</translation>
    </message>
    <message>
        <source>%1, %2 from the left edge</source>
        <translation>%1, %2 von der linken Kante</translation>
    </message>
    <message>
        <source>the room</source>
        <translation>der Raum</translation>
    </message>
    <message>
        <source>A photo is of: %1</source>
        <translation>Ein Foto zeigt: %1</translation>
    </message>
    <message>
        <source>at the workroom</source>
        <translation>in der Werkstatt</translation>
    </message>
</context>
<context>
    <name>truehang::PositionModel</name>
    <message>
        <source>Asking where we are</source>
        <translation>Die Position wird bestimmt</translation>
    </message>
    <message>
        <source>No position here</source>
        <translation>Hier keine Position</translation>
    </message>
    <message>
        <source>%1, within %2 m</source>
        <translation>%1, auf %2 m genau</translation>
    </message>
    <message>
        <source>Position of the site</source>
        <translation>Position des Ortes</translation>
    </message>
    <message>
        <source>Position taken off</source>
        <translation>Position entfernt</translation>
    </message>
</context>
<context>
    <name>truehang::QuestionsModel</name>
    <message>
        <source>The workroom asks one thing about this visit.</source>
        <translation>Die Werkstatt fragt etwas zu diesem Besuch.</translation>
    </message>
    <message>
        <source>The workroom asks %1 things about this visit.</source>
        <translation>Die Werkstatt fragt %1 Dinge zu diesem Besuch.</translation>
    </message>
    <message>
        <source>A window that was taken out</source>
        <translation>Ein Fenster, das herausgenommen wurde</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Answered %1: %2</source>
        <translation>Beantwortet am %1: %2</translation>
    </message>
    <message>
        <source>Answered by %1, %2: %3</source>
        <translation>Beantwortet von %1 am %2: %3</translation>
    </message>
    <message>
        <source>%1 asks, %2</source>
        <translation>%1 fragt, %2</translation>
    </message>
    <message>
        <source>That is too long: an answer has at most %1 letters.</source>
        <translation>Das ist zu lang: Eine Antwort hat höchstens %1 Buchstaben.</translation>
    </message>
    <message>
        <source>Write what to answer, or measure there again.</source>
        <translation>Schreiben Sie eine Antwort, oder messen Sie dort noch einmal.</translation>
    </message>
</context>
<context>
    <name>truehang::RulesModel</name>
    <message>
        <source>Heads</source>
        <translation>Köpfe</translation>
    </message>
    <message>
        <source>Cloth taken above the finished top: %1</source>
        <translation>Stoff über der fertigen Oberkante: %1</translation>
    </message>
    <message>
        <source>× fullness</source>
        <translation>-fache Stoffzugabe</translation>
    </message>
    <message>
        <source>widths</source>
        <translation>Bahnen</translation>
    </message>
    <message>
        <source>pleats</source>
        <translation>Falten</translation>
    </message>
    <message>
        <source>repeats</source>
        <translation>Rapporte</translation>
    </message>
    <message>
        <source>of the drop</source>
        <translation>der Höhe</translation>
    </message>
    <message>
        <source>of the length</source>
        <translation>der Länge</translation>
    </message>
    <message>
        <source>a width</source>
        <translation>je Bahn</translation>
    </message>
    <message>
        <source>The defaults of the trade</source>
        <translation>Die Vorgaben des Handwerks</translation>
    </message>
    <message>
        <source>version %1</source>
        <translation>Fassung %1</translation>
    </message>
    <message>
        <source>The workroom has: %1. This visit stays as it is until you take them.</source>
        <translation>Die Werkstatt hat: %1. Dieser Besuch bleibt, wie er ist, bis Sie sie übernehmen.</translation>
    </message>
    <message>
        <source>As the workroom has them: %1.</source>
        <translation>Wie in der Werkstatt: %1.</translation>
    </message>
    <message>
        <source>the workroom has %1</source>
        <translation>die Werkstatt hat %1</translation>
    </message>
    <message>
        <source>by default %1</source>
        <translation>Vorgabe %1</translation>
    </message>
    <message>
        <source>More than %1, up to %2.</source>
        <translation>Mehr als %1, bis %2.</translation>
    </message>
    <message>
        <source>From %1 to %2.</source>
        <translation>Von %1 bis %2.</translation>
    </message>
    <message>
        <source>Left empty: %1, the trade’s default.</source>
        <translation>Leer gelassen: %1, die Vorgabe des Handwerks.</translation>
    </message>
    <message>
        <source>The workroom has %1.</source>
        <translation>Die Werkstatt hat %1.</translation>
    </message>
    <message>
        <source>, changed for this visit</source>
        <translation>, für diesen Besuch geändert</translation>
    </message>
    <message>
        <source>House rule: %1</source>
        <translation>Hausregel: %1</translation>
    </message>
    <message>
        <source>Defaults</source>
        <translation>Vorgaben</translation>
    </message>
    <message>
        <source>The workroom’s house rules</source>
        <translation>Die Hausregeln der Werkstatt</translation>
    </message>
</context>
<context>
    <name>truehang::SendModel</name>
    <message>
        <source>Workroom at %1</source>
        <translation>Werkstatt unter %1</translation>
    </message>
    <message>
        <source>%1 at %2</source>
        <translation>%1 unter %2</translation>
    </message>
    <message>
        <source>No workroom yet. Everything is kept on this phone.</source>
        <translation>Noch keine Werkstatt. Alles wird auf diesem Telefon gesichert.</translation>
    </message>
    <message>
        <source>Nothing to send yet</source>
        <translation>Noch nichts zu senden</translation>
    </message>
    <message>
        <source>Photo, %1</source>
        <translation>Foto, %1</translation>
    </message>
    <message>
        <source>A photo that was taken out</source>
        <translation>Ein Foto, das entfernt wurde</translation>
    </message>
    <message>
        <source>waiting</source>
        <translation>wartet</translation>
    </message>
    <message>
        <source>on its way</source>
        <translation>unterwegs</translation>
    </message>
    <message>
        <source>refused: %1</source>
        <translation>abgelehnt: %1</translation>
    </message>
    <message>
        <source>waiting: %1</source>
        <translation>wartet: %1</translation>
    </message>
    <message>
        <source>Written: %1. It holds the survey; photos go to the workroom.</source>
        <translation>Geschrieben: %1. Die Datei enthält das Aufmaß; Fotos gehen an die Werkstatt.</translation>
    </message>
    <message>
        <source>All at the workroom</source>
        <translation>Alles in der Werkstatt</translation>
    </message>
    <message>
        <source>%1 of %2 at the workroom</source>
        <translation>%1 von %2 in der Werkstatt</translation>
    </message>
    <message>
        <source>at the workroom</source>
        <translation>in der Werkstatt</translation>
    </message>
    <message>
        <source>The visit, version %1</source>
        <translation>Der Besuch, Fassung %1</translation>
    </message>
    <message>
        <source>Only the workroom with the certificate %1 %2 … is trusted.</source>
        <translation>Nur der Werkstatt mit dem Zertifikat %1 %2 … wird vertraut.</translation>
    </message>
    <message>
        <source>This isn’t the whole pairing text. Copy it anew from the workroom’s page.</source>
        <translation>Das ist nicht der ganze Kopplungstext. Kopieren Sie ihn noch einmal von der Seite der Werkstatt.</translation>
    </message>
    <message>
        <source>on its way, %1 of %2 MB</source>
        <translation>unterwegs, %1 von %2 MB</translation>
    </message>
    <message>
        <source>waiting, %1 of %2 MB at the workroom: %3</source>
        <translation>wartet, %1 von %2 MB in der Werkstatt: %3</translation>
    </message>
    <message>
        <source>An answer to the workroom</source>
        <translation>Eine Antwort an die Werkstatt</translation>
    </message>
    <message>
        <source>No code can be read in this picture. Take it again from nearer: sharp, without glare, and with the white all round the code.</source>
        <translation>In diesem Bild ist kein Code zu lesen. Nehmen Sie es noch einmal auf, aus größerer Nähe: scharf, ohne Spiegelung und mit dem weißen Rand rings um den Code.</translation>
    </message>
    <message>
        <source>The code in this picture isn’t one for pairing. On the workroom’s page of devices choose “Pair a phone”, and take a picture of the code that stands there.</source>
        <translation>Der Code in diesem Bild ist keiner zum Koppeln. Wählen Sie auf der Geräteseite der Werkstatt „Pair a phone“ und nehmen Sie ein Bild von dem Code auf, der dort steht.</translation>
    </message>
</context>
<context>
    <name>truehang::Sending</name>
    <message>
        <source>This isn’t an address. It looks like 192.0.2.7:8080.</source>
        <translation>Das ist keine Adresse. Sie sieht aus wie 192.0.2.7:8080.</translation>
    </message>
    <message>
        <source>No workroom answers there. Check the address, and that both are in one network.</source>
        <translation>Dort antwortet keine Werkstatt. Prüfen Sie die Adresse und ob beide im selben Netz sind.</translation>
    </message>
    <message>
        <source>Another certificate answers there than the pairing text names. Nothing was sent. Ask the workroom for a new text, and paste it as the address.</source>
        <translation>Dort antwortet ein anderes Zertifikat als das im Kopplungstext. Es wurde nichts gesendet. Lassen Sie sich von der Werkstatt einen neuen Text geben und fügen Sie ihn als Adresse ein.</translation>
    </message>
    <message>
        <source>The certificate there isn’t one this phone trusts. Nothing was sent. Paste the pairing text that the workroom shows as the address.</source>
        <translation>Dem Zertifikat dort vertraut dieses Telefon nicht. Es wurde nichts gesendet. Fügen Sie den Kopplungstext, den die Werkstatt zeigt, als Adresse ein.</translation>
    </message>
    <message>
        <source>What both were made from can’t be read here.</source>
        <translation>Woraus beides entstanden ist, ist hier nicht lesbar.</translation>
    </message>
    <message>
        <source>Put together with what somebody else sent</source>
        <translation>Zusammengeführt mit dem, was jemand anderes gesendet hat</translation>
    </message>
    <message>
        <source>Put together with what %1 sent</source>
        <translation>Zusammengeführt mit dem, was %1 gesendet hat</translation>
    </message>
    <message>
        <source>The visit was closed meanwhile.</source>
        <translation>Der Besuch wurde inzwischen geschlossen.</translation>
    </message>
    <message>
        <source>The visit is being opened.</source>
        <translation>Der Besuch wird gerade geöffnet.</translation>
    </message>
</context>
<context>
    <name>truehang::Settings</name>
    <message>
        <source>as the system</source>
        <translation>wie das System</translation>
    </message>
</context>
<context>
    <name>truehang::SheetsModel</name>
    <message>
        <source>measure sheets</source>
        <translation>Maßblätter</translation>
    </message>
    <message>
        <source>cutting list</source>
        <translation>Zuschnittliste</translation>
    </message>
    <message>
        <source>making sheets</source>
        <translation>Nähblätter</translation>
    </message>
    <message>
        <source>hanging sheets</source>
        <translation>Montageblätter</translation>
    </message>
    <message>
        <source>all windows</source>
        <translation>alle Fenster</translation>
    </message>
    <message>
        <source>all sheets</source>
        <translation>alle Blätter</translation>
    </message>
    <message>
        <source>Written: %1</source>
        <translation>Geschrieben: %1</translation>
    </message>
    <message>
        <source>agreement</source>
        <translation>Vereinbarung</translation>
    </message>
    <message>
        <source>Writing the PDF, %1 %</source>
        <translation>Das PDF wird geschrieben, %1 %</translation>
    </message>
    <message>
        <source>Stopped. Nothing was written.</source>
        <translation>Angehalten. Nichts wurde geschrieben.</translation>
    </message>
    <message>
        <source>light sheets</source>
        <translation>Lichtblätter</translation>
    </message>
</context>
<context>
    <name>truehang::SkylineModel</name>
    <message>
        <source>%1° left</source>
        <translation>%1° links</translation>
    </message>
    <message>
        <source>%1° right</source>
        <translation>%1° rechts</translation>
    </message>
    <message>
        <source>straight ahead</source>
        <translation>geradeaus</translation>
    </message>
    <message>
        <source>Something</source>
        <translation>Etwas</translation>
    </message>
    <message>
        <source>from %1 to %2, %3° high</source>
        <translation>von %1 bis %2, %3° hoch</translation>
    </message>
    <message>
        <source>How high its top stands over the level</source>
        <translation>Wie hoch die Oberkante über der Waagerechten steht</translation>
    </message>
    <message>
        <source>Its left edge, from straight ahead</source>
        <translation>Linke Kante, von geradeaus</translation>
    </message>
    <message>
        <source>with a minus: to the left</source>
        <translation>mit Minus: nach links</translation>
    </message>
    <message>
        <source>Its right edge, from straight ahead</source>
        <translation>Rechte Kante, von geradeaus</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Was es ist</translation>
    </message>
    <message>
        <source>Outside: %1</source>
        <translation>Draußen: %1</translation>
    </message>
    <message>
        <source>What stands outside</source>
        <translation>Was draußen steht</translation>
    </message>
    <message>
        <source>No longer outside</source>
        <translation>Nicht mehr draußen</translation>
    </message>
    <message>
        <source>Its left edge must stand to the left of its right edge.</source>
        <translation>Die linke Kante muss links von der rechten stehen.</translation>
    </message>
    <message>
        <source>What stands outside: %1</source>
        <translation>Was draußen steht: %1</translation>
    </message>
</context>
<context>
    <name>truehang::TakenTwiceModel</name>
    <message>
        <source>Somebody else worked on this visit too. What came on %1 is in it.</source>
        <translation>Auch jemand anderes hat an diesem Besuch gearbeitet. Was am %1 kam, ist darin.</translation>
    </message>
    <message>
        <source>%1 worked on this visit too. What came on %2 is in it.</source>
        <translation>Auch %1 hat an diesem Besuch gearbeitet. Was am %2 kam, ist darin.</translation>
    </message>
    <message>
        <source>One thing was taken twice. Say which one counts.</source>
        <translation>Eines wurde zweimal genommen. Sagen Sie, was gilt.</translation>
    </message>
    <message>
        <source>%1 things were taken twice. Say which ones count.</source>
        <translation>%1 Dinge wurden zweimal genommen. Sagen Sie, was gilt.</translation>
    </message>
    <message>
        <source>One thing here was taken twice.</source>
        <translation>Eines wurde hier zweimal genommen.</translation>
    </message>
    <message>
        <source>%1 things here were taken twice.</source>
        <translation>%1 Dinge wurden hier zweimal genommen.</translation>
    </message>
    <message>
        <source>The visit</source>
        <translation>Der Besuch</translation>
    </message>
    <message>
        <source>holds meanwhile</source>
        <translation>gilt bis dahin</translation>
    </message>
    <message>
        <source>Take %1</source>
        <translation>%1 nehmen</translation>
    </message>
    <message>
        <source>measure it again</source>
        <translation>noch einmal messen</translation>
    </message>
    <message>
        <source>Measure it again: %1</source>
        <translation>Noch einmal messen: %1</translation>
    </message>
    <message>
        <source>Counts: %1</source>
        <translation>Gilt: %1</translation>
    </message>
    <message>
        <source>Settled: %1</source>
        <translation>Entschieden: %1</translation>
    </message>
</context>
<context>
    <name>truehang::VisitFileModel</name>
    <message>
        <source>The file can’t be opened. Nothing was taken in.</source>
        <translation>Die Datei lässt sich nicht öffnen. Nichts wurde übernommen.</translation>
    </message>
    <message>
        <source>The file can’t be read whole. Nothing was taken in.</source>
        <translation>Die Datei lässt sich nicht ganz lesen. Nichts wurde übernommen.</translation>
    </message>
    <message>
        <source>%1 1 photo isn’t in it.</source>
        <translation>%1 1 Foto ist nicht darin.</translation>
    </message>
    <message>
        <source>%1 %2 photos aren’t in it.</source>
        <translation>%1 %2 Fotos sind nicht darin.</translation>
    </message>
    <message>
        <source>Not sent to the workroom for a day. Until it is, a file keeps it safe.</source>
        <translation>Seit einem Tag nicht an die Werkstatt gesendet. Bis dahin hebt eine Datei ihn sicher auf.</translation>
    </message>
    <message>
        <source>Visits (*%1)</source>
        <translation>Besuche (*%1)</translation>
    </message>
    <message>
        <source>Writing the file, %1 %</source>
        <translation>Datei wird geschrieben, %1 %</translation>
    </message>
    <message>
        <source>The file couldn’t be written. %1</source>
        <translation>Die Datei konnte nicht geschrieben werden. %1</translation>
    </message>
    <message>
        <source>Stopped. Nothing was written.</source>
        <translation>Angehalten. Nichts wurde geschrieben.</translation>
    </message>
    <message>
        <source>Written: %1.</source>
        <translation>Geschrieben: %1.</translation>
    </message>
    <message>
        <source>Taking the visit in, %1 %</source>
        <translation>Besuch wird übernommen, %1 %</translation>
    </message>
    <message>
        <source>Stopped. Nothing was taken in.</source>
        <translation>Angehalten. Nichts wurde übernommen.</translation>
    </message>
    <message>
        <source>From a file</source>
        <translation>Aus einer Datei</translation>
    </message>
    <message>
        <source>%1, from a file</source>
        <translation>%1, aus einer Datei</translation>
    </message>
    <message>
        <source>Taken in from a file</source>
        <translation>Aus einer Datei übernommen</translation>
    </message>
    <message>
        <source>A visit</source>
        <translation>Ein Besuch</translation>
    </message>
    <message>
        <source>%1 was among the removed visits, just as in the file; it is back.</source>
        <translation>%1 war unter den entfernten Besuchen, genau wie in der Datei; der Besuch ist wieder da.</translation>
    </message>
    <message>
        <source>%1 is here already, just as in the file.</source>
        <translation>%1 ist schon hier, genau wie in der Datei.</translation>
    </message>
    <message>
        <source>%1 is here in another state. What the file holds was put beside it, as a visit of its own whose title ends in “from a file”.</source>
        <translation>%1 ist hier in einem anderen Stand. Was die Datei enthält, steht jetzt daneben, als eigener Besuch, dessen Titel mit „aus einer Datei“ endet.</translation>
    </message>
    <message>
        <source>%1 was taken in.</source>
        <translation>%1 wurde übernommen.</translation>
    </message>
    <message>
        <source>%1 can’t be read here. What the file holds was put beside it, as a visit of its own whose title ends in “from a file”.</source>
        <translation>%1 lässt sich hier nicht lesen. Was die Datei enthält, steht jetzt daneben, als eigener Besuch, dessen Titel mit „aus einer Datei“ endet.</translation>
    </message>
</context>
<context>
    <name>truehang::VisitList</name>
    <message>
        <source>to measure</source>
        <translation>zu messen</translation>
    </message>
    <message>
        <source>measuring</source>
        <translation>wird gemessen</translation>
    </message>
    <message>
        <source>to send</source>
        <translation>zu senden</translation>
    </message>
    <message>
        <source>the workroom asks</source>
        <translation>die Werkstatt fragt</translation>
    </message>
    <message>
        <source>Erase this visit for good? Its readings, photos and history leave this phone, and nothing brings them back.</source>
        <translation>Diesen Besuch endgültig löschen? Seine Maße, Fotos und sein Verlauf verlassen dieses Telefon, und nichts holt sie zurück.</translation>
    </message>
    <message>
        <source>Erase %1 visits for good? Their readings, photos and history leave this phone, and nothing brings them back.</source>
        <translation>%1 Besuche endgültig löschen? Ihre Maße, Fotos und ihr Verlauf verlassen dieses Telefon, und nichts holt sie zurück.</translation>
    </message>
    <message>
        <source>The workroom hasn’t confirmed: %1. This phone has the only copy.</source>
        <translation>Die Werkstatt hat nicht bestätigt: %1. Nur dieses Telefon hat sie.</translation>
    </message>
    <message>
        <source>at the workroom</source>
        <translation>in der Werkstatt</translation>
    </message>
</context>
<context>
    <name>truehang::VisitModel</name>
    <message>
        <source>House or visit</source>
        <translation>Haus oder Besuch</translation>
    </message>
    <message>
        <source>Client</source>
        <translation>Kundschaft</translation>
    </message>
    <message>
        <source>Phone</source>
        <translation>Telefon</translation>
    </message>
    <message>
        <source>Mail</source>
        <translation>Mail</translation>
    </message>
    <message>
        <source>Address</source>
        <translation>Adresse</translation>
    </message>
    <message>
        <source>Measured by</source>
        <translation>Gemessen von</translation>
    </message>
    <message>
        <source>Planed frame</source>
        <translation>Gehobelter Rahmen</translation>
    </message>
    <message>
        <source>Sound plaster</source>
        <translation>Glatter Putz</translation>
    </message>
    <message>
        <source>Rough stone</source>
        <translation>Rauer Stein</translation>
    </message>
    <message>
        <source>New visit</source>
        <translation>Neuer Besuch</translation>
    </message>
    <message>
        <source>%1, within %2 m</source>
        <translation>%1, auf %2 m genau</translation>
    </message>
    <message>
        <source>Agreed by %1, %2</source>
        <translation>Zugestimmt: %1, %2</translation>
    </message>
    <message>
        <source>House rules</source>
        <translation>Hausregeln</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Readings in</source>
        <translation>Maße in</translation>
    </message>
    <message>
        <source>Tape</source>
        <translation>Bandmaß</translation>
    </message>
    <message>
        <source>Class II</source>
        <translation>Klasse II</translation>
    </message>
    <message>
        <source>Edges</source>
        <translation>Kanten</translation>
    </message>
    <message>
        <source>%1 mm, by the house rules</source>
        <translation>%1 mm, nach den Hausregeln</translation>
    </message>
    <message>
        <source>the defaults</source>
        <translation>die Vorgaben</translation>
    </message>
    <message>
        <source>Readings in %1</source>
        <translation>Maße in %1</translation>
    </message>
    <message>
        <source>Tape of class %1</source>
        <translation>Bandmaß der %1</translation>
    </message>
    <message>
        <source>Edges: %1</source>
        <translation>Kanten: %1</translation>
    </message>
    <message>
        <source>no windows yet</source>
        <translation>noch keine Fenster</translation>
    </message>
    <message>
        <source>1 window</source>
        <translation>1 Fenster</translation>
    </message>
    <message>
        <source>%1 windows</source>
        <translation>%1 Fenster</translation>
    </message>
    <message>
        <source>young children: not known, counts as yes</source>
        <translation>kleine Kinder: nicht bekannt, zählt als ja</translation>
    </message>
    <message>
        <source>young children: yes</source>
        <translation>kleine Kinder: ja</translation>
    </message>
    <message>
        <source>young children: no</source>
        <translation>kleine Kinder: nein</translation>
    </message>
    <message>
        <source>provisional: something is to be measured again</source>
        <translation>vorläufig: etwas ist noch einmal zu messen</translation>
    </message>
    <message>
        <source>%1, taken out</source>
        <translation>%1, herausgenommen</translation>
    </message>
    <message>
        <source>Room %1</source>
        <translation>Raum %1</translation>
    </message>
    <message>
        <source>Room: %1</source>
        <translation>Raum: %1</translation>
    </message>
    <message>
        <source>Room used as %1</source>
        <translation>Raum genutzt als %1</translation>
    </message>
    <message>
        <source>Young children: %1</source>
        <translation>Kleine Kinder: %1</translation>
    </message>
    <message>
        <source>Room taken out</source>
        <translation>Raum herausgenommen</translation>
    </message>
    <message>
        <source>Window %1</source>
        <translation>Fenster %1</translation>
    </message>
    <message>
        <source>Window: %1</source>
        <translation>Fenster: %1</translation>
    </message>
    <message>
        <source>Window taken out: %1</source>
        <translation>Fenster herausgenommen: %1</translation>
    </message>
    <message>
        <source>Window back: %1</source>
        <translation>Fenster zurück: %1</translation>
    </message>
    <message>
        <source>Room %1 of %2</source>
        <translation>Raum %1 von %2</translation>
    </message>
    <message>
        <source>Window %1 of %2 in %3</source>
        <translation>Fenster %1 von %2 in %3</translation>
    </message>
    <message>
        <source>Order of the rooms</source>
        <translation>Reihenfolge der Räume</translation>
    </message>
    <message>
        <source>Order of the windows</source>
        <translation>Reihenfolge der Fenster</translation>
    </message>
    <message>
        <source>Window to another room</source>
        <translation>Fenster in einen anderen Raum</translation>
    </message>
    <message>
        <source>Kept: %1</source>
        <translation>Aufgehoben: %1</translation>
    </message>
    <message>
        <source>Undone: %1</source>
        <translation>Rückgängig gemacht: %1</translation>
    </message>
    <message>
        <source>Done again: %1</source>
        <translation>Wiederholt: %1</translation>
    </message>
    <message>
        <source>Add the first window</source>
        <translation>Das erste Fenster anlegen</translation>
    </message>
    <message>
        <source>Measure the next window</source>
        <translation>Nächstes Fenster messen</translation>
    </message>
    <message>
        <source>Agree with the client</source>
        <translation>Mit der Kundschaft vereinbaren</translation>
    </message>
    <message>
        <source>Have it signed again</source>
        <translation>Noch einmal unterschreiben lassen</translation>
    </message>
    <message>
        <source>Send to the workroom</source>
        <translation>An die Werkstatt senden</translation>
    </message>
    <message>
        <source>Back to the visits</source>
        <translation>Zurück zu den Besuchen</translation>
    </message>
    <message>
        <source>Next window</source>
        <translation>Nächstes Fenster</translation>
    </message>
    <message>
        <source>Back to the visit</source>
        <translation>Zurück zum Besuch</translation>
    </message>
    <message>
        <source>Go on measuring</source>
        <translation>Weiter messen</translation>
    </message>
    <message>
        <source>There is nothing to undo.</source>
        <translation>Es gibt nichts rückgängig zu machen.</translation>
    </message>
    <message>
        <source>Erased for good. What was done to this visit before can’t be undone any more.</source>
        <translation>Endgültig gelöscht. Was vorher an diesem Besuch getan wurde, lässt sich nicht mehr rückgängig machen.</translation>
    </message>
</context>
<context>
    <name>truehang::VisitRows</name>
    <message>
        <source>New visit</source>
        <translation>Neuer Besuch</translation>
    </message>
    <message>
        <source>1 window</source>
        <translation>1 Fenster</translation>
    </message>
    <message>
        <source>%1 windows</source>
        <translation>%1 Fenster</translation>
    </message>
    <message>
        <source>Today</source>
        <translation>Heute</translation>
    </message>
    <message>
        <source>not sent for a day: keep it as a file</source>
        <translation>seit einem Tag nicht gesendet: als Datei aufheben</translation>
    </message>
    <message>
        <source>damaged: it can’t be read. It was left as it is: take it in from a file.</source>
        <translation>beschädigt: lässt sich nicht lesen. Er blieb, wie er ist: aus einer Datei übernehmen.</translation>
    </message>
</context>
<context>
    <name>truehang::WalkAloud</name>
    <message>
        <source>%1 millimetres</source>
        <translation>%1 Millimeter</translation>
    </message>
    <message>
        <source>%1 centimetres</source>
        <translation>%1 Zentimeter</translation>
    </message>
    <message>
        <source>%1 metres</source>
        <translation>%1 Meter</translation>
    </message>
    <message>
        <source>%1 inches</source>
        <translation>%1 Zoll</translation>
    </message>
    <message>
        <source>%1 degrees</source>
        <translation>%1 Grad</translation>
    </message>
    <message>
        <source>%1. %2</source>
        <translation>%1. %2</translation>
    </message>
</context>
<context>
    <name>truehang::WalkModel</name>
    <message>
        <source>Every station is done</source>
        <translation>Alle Maße sind genommen</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>%1, proposed</source>
        <translation>%1, vorgeschlagen</translation>
    </message>
    <message>
        <source>about %1</source>
        <translation>etwa %1</translation>
    </message>
    <message>
        <source>%1, copied</source>
        <translation>%1, kopiert</translation>
    </message>
    <message>
        <source>%1, planned</source>
        <translation>%1, geplant</translation>
    </message>
    <message>
        <source>not taken: %1</source>
        <translation>nicht genommen: %1</translation>
    </message>
    <message>
        <source>to measure</source>
        <translation>zu messen</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1 isn’t kept. %2</source>
        <translation>%1 wird nicht gesichert. %2</translation>
    </message>
    <message>
        <source>%1: not taken</source>
        <translation>%1: nicht genommen</translation>
    </message>
    <message>
        <source>Measure again: %1</source>
        <translation>Noch einmal messen: %1</translation>
    </message>
    <message>
        <source>Measure %1</source>
        <translation>%1 messen</translation>
    </message>
    <message>
        <source>%1 stands as %2, proposed, until it is measured</source>
        <translation>%1 steht als %2 vorgeschlagen, bis gemessen ist</translation>
    </message>
    <message>
        <source>%1: %2, proposed</source>
        <translation>%1: %2, vorgeschlagen</translation>
    </message>
    <message>
        <source>Proposed: no tape has confirmed it yet</source>
        <translation>Vorgeschlagen: noch mit keinem Bandmaß bestätigt</translation>
    </message>
    <message>
        <source>It is up: measure it as it hangs. Planned: %1</source>
        <translation>Sie hängt: Messen Sie, wie sie hängt. Geplant: %1</translation>
    </message>
    <message>
        <source>No figure needs another reading. These stand without one:</source>
        <translation>Kein Wert braucht noch ein Maß. Diese stehen ohne eines da:</translation>
    </message>
</context>
<context>
    <name>truehang::WallPhoto</name>
    <message>
        <source>The photo itself isn’t on this phone.</source>
        <translation>Das Foto selbst ist nicht auf diesem Telefon.</translation>
    </message>
    <message>
        <source>The photo can’t be read.</source>
        <translation>Das Foto lässt sich nicht lesen.</translation>
    </message>
</context>
<context>
    <name>truehang::WorkroomRules</name>
    <message>
        <source>The workroom’s house rules came, but can’t be kept: %1</source>
        <translation>Die Hausregeln der Werkstatt kamen, sind aber nicht zu sichern: %1</translation>
    </message>
    <message>
        <source>“%1” must be a number of more than %2, up to %3.</source>
        <translation>„%1“ muss eine Zahl über %2 und bis %3 sein.</translation>
    </message>
    <message>
        <source>“%1” must be a number from %2 to %3.</source>
        <translation>„%1“ muss eine Zahl von %2 bis %3 sein.</translation>
    </message>
    <message>
        <source>What the workroom gave as its house rules can’t be used. %1 The earlier ones stay. Ask the workroom to look at them.</source>
        <translation>Was die Werkstatt als Hausregeln gegeben hat, lässt sich nicht verwenden. %1 Die früheren bleiben. Bitten Sie die Werkstatt, sie anzusehen.</translation>
    </message>
</context>
<context>
    <name>twice</name>
    <message>
        <source>from somebody else, came %1</source>
        <translation>von jemand anderem, gekommen %1</translation>
    </message>
    <message>
        <source>from %1, came %2</source>
        <translation>von %1, gekommen %2</translation>
    </message>
    <message>
        <source>from this phone</source>
        <translation>von diesem Telefon</translation>
    </message>
    <message>
        <source>%1 was read twice. Say which one counts, or take it again.</source>
        <translation>%1: zweimal gemessen. Sagen Sie, welches gilt, oder messen Sie noch einmal.</translation>
    </message>
    <message>
        <source>from somebody else</source>
        <translation>von jemand anderem</translation>
    </message>
    <message>
        <source>from %1</source>
        <translation>von %1</translation>
    </message>
    <message>
        <source>from the left</source>
        <translation>von links</translation>
    </message>
    <message>
        <source>width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>bottom edge</source>
        <translation>Unterkante</translation>
    </message>
    <message>
        <source>height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>depth</source>
        <translation>Tiefe</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>selvedge</source>
        <translation>Webkante</translation>
    </message>
    <message>
        <source>repeat</source>
        <translation>Rapport</translation>
    </message>
    <message>
        <source>repeat across</source>
        <translation>Rapport quer</translation>
    </message>
    <message>
        <source>match</source>
        <translation>Ansatz</translation>
    </message>
    <message>
        <source>price a metre</source>
        <translation>Preis je Meter</translation>
    </message>
    <message>
        <source>currency</source>
        <translation>Währung</translation>
    </message>
    <message>
        <source>latitude</source>
        <translation>Breitengrad</translation>
    </message>
    <message>
        <source>longitude</source>
        <translation>Längengrad</translation>
    </message>
    <message>
        <source>within, in m</source>
        <translation>genau auf, in m</translation>
    </message>
    <message>
        <source>above the sea, in m</source>
        <translation>über dem Meer, in m</translation>
    </message>
    <message>
        <source>degrees from north</source>
        <translation>Grad von Nord</translation>
    </message>
    <message>
        <source>by</source>
        <translation>durch</translation>
    </message>
    <message>
        <source>on</source>
        <translation>am</translation>
    </message>
    <message>
        <source>words</source>
        <translation>Worte</translation>
    </message>
    <message>
        <source>name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>edition</source>
        <translation>Ausgabe</translation>
    </message>
    <message>
        <source>date</source>
        <translation>Datum</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>as they stood before</source>
        <translation>wie vorher</translation>
    </message>
    <message>
        <source>in another order</source>
        <translation>in anderer Reihenfolge</translation>
    </message>
    <message>
        <source>first %1</source>
        <translation>zuerst %1</translation>
    </message>
    <message>
        <source>Take it out</source>
        <translation>Herausnehmen</translation>
    </message>
    <message>
        <source>Keep it</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>nothing there</source>
        <translation>nichts</translation>
    </message>
</context>
<context>
    <name>walk</name>
    <message>
        <source>In one go %1, in %2 parts %3.</source>
        <translation>In einem Zug %1, in %2 Teilen %3.</translation>
    </message>
    <message>
        <source>two digits exchanged</source>
        <translation>zwei Ziffern vertauscht</translation>
    </message>
    <message>
        <source>one digit wrong</source>
        <translation>eine Ziffer falsch</translation>
    </message>
    <message>
        <source>a digit left out</source>
        <translation>eine Ziffer fehlt</translation>
    </message>
    <message>
        <source>a digit typed twice</source>
        <translation>eine Ziffer doppelt getippt</translation>
    </message>
    <message>
        <source>another unit</source>
        <translation>andere Einheit</translation>
    </message>
    <message>
        <source>another fraction</source>
        <translation>anderer Bruch</translation>
    </message>
    <message>
        <source>the tape’s case</source>
        <translation>das Gehäuse des Bandmaßes</translation>
    </message>
    <message>
        <source>read off the other side of the bevel</source>
        <translation>auf der anderen Seite der Schmiege abgelesen</translation>
    </message>
    <message>
        <source>the outside angle</source>
        <translation>der Außenwinkel</translation>
    </message>
    <message>
        <source>half of it, as a saw is set</source>
        <translation>die Hälfte, wie eine Säge gestellt wird</translation>
    </message>
    <message>
        <source>, and %1, perhaps %2</source>
        <translation>, und %1, vielleicht %2</translation>
    </message>
    <message>
        <source>%1, perhaps %2</source>
        <translation>%1, vielleicht %2</translation>
    </message>
    <message>
        <source>Adds up</source>
        <translation>Passt zusammen</translation>
    </message>
    <message>
        <source>Doesn’t add up</source>
        <translation>Passt nicht zusammen</translation>
    </message>
    <message>
        <source>These differ by %1</source>
        <translation>Diese weichen um %1 ab</translation>
    </message>
    <message>
        <source>exchanged with another</source>
        <translation>mit einem anderen vertauscht</translation>
    </message>
    <message>
        <source>exchanged with %1</source>
        <translation>vertauscht mit %1</translation>
    </message>
    <message>
        <source>same as another</source>
        <translation>dasselbe wie ein anderes</translation>
    </message>
    <message>
        <source>same as %1</source>
        <translation>dasselbe wie %1</translation>
    </message>
    <message>
        <source>no slip explains it</source>
        <translation>kein Versehen erklärt es</translation>
    </message>
    <message>
        <source>as likely as the next</source>
        <translation>so wahrscheinlich wie das nächste</translation>
    </message>
    <message>
        <source>just as likely</source>
        <translation>ebenso wahrscheinlich</translation>
    </message>
    <message>
        <source>likely</source>
        <translation>wahrscheinlich</translation>
    </message>
    <message>
        <source>possible</source>
        <translation>möglich</translation>
    </message>
    <message>
        <source>It should read %1</source>
        <translation>Es müsste %1 heißen</translation>
    </message>
    <message>
        <source>%1 should read %2</source>
        <translation>%1 müsste %2 heißen</translation>
    </message>
    <message>
        <source>None of these, or two slips at once: likely</source>
        <translation>Keines davon, oder zwei Versehen zugleich: wahrscheinlich</translation>
    </message>
    <message>
        <source>None of these, or two slips at once: possible</source>
        <translation>Keines davon, oder zwei Versehen zugleich: möglich</translation>
    </message>
    <message>
        <source>None of these, or two slips at once: less likely</source>
        <translation>Keines davon, oder zwei Versehen zugleich: weniger wahrscheinlich</translation>
    </message>
    <message>
        <source>at no known time</source>
        <translation>zu unbekannter Zeit</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>proposed</source>
        <translation>vorgeschlagen</translation>
    </message>
    <message>
        <source>estimated, ± %1</source>
        <translation>geschätzt, ± %1</translation>
    </message>
    <message>
        <source>estimated</source>
        <translation>geschätzt</translation>
    </message>
    <message>
        <source>copied</source>
        <translation>kopiert</translation>
    </message>
    <message>
        <source>counts</source>
        <translation>gilt</translation>
    </message>
    <message>
        <source>replaced</source>
        <translation>ersetzt</translation>
    </message>
    <message>
        <source>stands beside the one that counts</source>
        <translation>steht neben dem, das gilt</translation>
    </message>
    <message>
        <source>Too high to reach safely</source>
        <translation>Zu hoch, um sicher hinzukommen</translation>
    </message>
    <message>
        <source>Something stands in the way</source>
        <translation>Etwas steht im Weg</translation>
    </message>
    <message>
        <source>There is no such edge here</source>
        <translation>Diese Kante gibt es hier nicht</translation>
    </message>
    <message>
        <source>The client doesn’t want it touched</source>
        <translation>Die Kundschaft möchte nicht, dass es berührt wird</translation>
    </message>
    <message>
        <source>On the next visit</source>
        <translation>Beim nächsten Besuch</translation>
    </message>
    <message>
        <source>Same as %1: %2</source>
        <translation>Wie %1: %2</translation>
    </message>
    <message>
        <source>About %1, give or take %2</source>
        <translation>Etwa %1, auf %2 genau</translation>
    </message>
    <message>
        <source>Adds up, to %1 (tape and edges allow %2)</source>
        <translation>Passt zusammen, auf %1 (Bandmaß und Kanten erlauben %2)</translation>
    </message>
    <message>
        <source>Doesn’t add up: off by %1, tape and edges allow %2</source>
        <translation>Passt nicht zusammen: um %1, Bandmaß und Kanten erlauben %2</translation>
    </message>
    <message>
        <source>Tape and edges allow %1.</source>
        <translation>Bandmaß und Kanten erlauben %1.</translation>
    </message>
    <message>
        <source>The photo agrees, to %1 (allowed %2)</source>
        <translation>Das Foto stimmt überein, auf %1 (erlaubt %2)</translation>
    </message>
    <message>
        <source>The photo is %1 apart, allowed %2</source>
        <translation>Das Foto weicht um %1 ab, erlaubt %2</translation>
    </message>
</context>
<context>
    <name>writing</name>
    <message>
        <source>This can’t be below zero.</source>
        <translation>Das kann nicht unter null sein.</translation>
    </message>
    <message>
        <source>A number is understood here, as 1.5 or 1,5.</source>
        <translation>Hier wird eine Zahl verstanden, etwa 1.5 oder 1,5.</translation>
    </message>
    <message>
        <source>Between %1 and %2 is understood here.</source>
        <translation>Verstanden wird hier %1 bis %2.</translation>
    </message>
    <message>
        <source>Latitude and longitude in degrees are understood here, as 54.6, -1.1.</source>
        <translation>Hier werden Breite und Länge in Grad verstanden, wie 54.6, -1.1.</translation>
    </message>
</context>
</TS>
