<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>engine</name>
    <message>
        <source> (in this uncertainty: {0})</source>
        <translation> (in dieser Unsicherheit: {0})</translation>
    </message>
    <message>
        <source> (not in: {0})</source>
        <translation> (nicht darin: {0})</translation>
    </message>
    <message>
        <source> ({0} more like it)</source>
        <translation> ({0} weitere dieser Art)</translation>
    </message>
    <message>
        <source> It was taken {0} min before the start.</source>
        <translation> Er wurde {0} min vor dem Start genommen.</translation>
    </message>
    <message>
        <source> at only {0} V across the motor ({1} ohm behind its brushes, as of one that stands)</source>
        <translation> bei nur {0} V am Motor ({1} Ohm hinter seinen Bürsten, wie bei einem stehenden)</translation>
    </message>
    <message>
        <source> at speed {0}</source>
        <translation> bei Stufe {0}</translation>
    </message>
    <message>
        <source> from {0} A to {1} A</source>
        <translation> von {0} A auf {1} A</translation>
    </message>
    <message>
        <source> while {0} V stood across the motor</source>
        <translation>, während {0} V am Motor anlagen</translation>
    </message>
    <message>
        <source>(switched itself off?</source>
        <translation>(hat sich abgeschaltet?</translation>
    </message>
    <message>
        <source>, and {0} times it came back</source>
        <translation>, und {0}-mal kam er zurück</translation>
    </message>
    <message>
        <source>, or another</source>
        <translation>, oder anderes</translation>
    </message>
    <message>
        <source>, right at a tap</source>
        <translation>, genau beim Klopfen</translation>
    </message>
    <message>
        <source>, right at a wiggle</source>
        <translation>, genau beim Wackeln</translation>
    </message>
    <message>
        <source>, showing overload meanwhile</source>
        <translation>, zeigte derweil Überlauf</translation>
    </message>
    <message>
        <source>, {0} of them beyond the uncertainty</source>
        <translation>, davon {0} über die Unsicherheit hinaus</translation>
    </message>
    <message>
        <source>, {0} of them within reach of a tap</source>
        <translation>, davon {0} in Reichweite eines Klopfens</translation>
    </message>
    <message>
        <source>: the motor is open inside</source>
        <translation>: der Motor ist innen offen</translation>
    </message>
    <message>
        <source>; a difference below about {0} % could not have been seen</source>
        <translation>; ein Unterschied unter etwa {0} % wäre nicht zu sehen gewesen</translation>
    </message>
    <message>
        <source>; a held rotor would look the same on this speed, {0} would settle it</source>
        <translation>; ein blockierter Läufer sähe auf dieser Stufe gleich aus, {0} würde es klären</translation>
    </message>
    <message>
        <source>; at least {0} are asked for: wait until it stops, and tap again.</source>
        <translation>; mindestens {0} sind verlangt: warten, bis es steht, und noch einmal klopfen.</translation>
    </message>
    <message>
        <source>; but {0}, so that nothing is proven of the motor</source>
        <translation>; aber {0}, sodass für den Motor nichts bewiesen ist</translation>
    </message>
    <message>
        <source>; current came back {0} s (± {1} s) after a tap</source>
        <translation>; der Strom kam {0} s (± {1} s) nach einem Klopfen zurück</translation>
    </message>
    <message>
        <source>; no steady current at its speed to compare with</source>
        <translation>; kein ruhiger Strom bei seiner Stufe zum Vergleich</translation>
    </message>
    <message>
        <source>; one of {0} s would show with a chance of {1} %</source>
        <translation>; einer von {0} s wäre mit {1} % Wahrscheinlichkeit zu sehen</translation>
    </message>
    <message>
        <source>; probability by chance {0} (permutation of the tap times over the time without current, {1} arrangements)</source>
        <translation>; Wahrscheinlichkeit durch Zufall {0} (Vertauschung der Klopfzeiten über die Zeit ohne Strom, {1} Anordnungen)</translation>
    </message>
    <message>
        <source>; the longest:</source>
        <translation>; der längste:</translation>
    </message>
    <message>
        <source>; the voltage across the motor was not read</source>
        <translation>; die Spannung am Motor wurde nicht gelesen</translation>
    </message>
    <message>
        <source>; with this uncertainty a small current can&apos;t be told from none</source>
        <translation>; bei dieser Unsicherheit ist ein kleiner Strom nicht von keinem zu unterscheiden</translation>
    </message>
    <message>
        <source>; {0} of the marks came up to {1} s after the return, as a hand on the key is late (up to 0.5 s is allowed for)</source>
        <translation>; {0} der Marken kamen bis zu {1} s nach der Rückkehr, da die Hand an der Taste spät ist (bis 0,5 s sind zugelassen)</translation>
    </message>
    <message>
        <source>; {0} s on both sides are asked for: hold still for longer.</source>
        <translation>; {0} s auf beiden Seiten sind verlangt: länger stillhalten.</translation>
    </message>
    <message>
        <source>; {0} tap(s) without the current coming back</source>
        <translation>; {0}-mal geklopft, ohne dass der Strom zurückkam</translation>
    </message>
    <message>
        <source>; {0} would settle it</source>
        <translation>; {0} würde es klären</translation>
    </message>
    <message>
        <source>A connector moved by hand disturbs the circuit.</source>
        <translation>Ein von Hand bewegter Stecker stört den Kreis.</translation>
    </message>
    <message>
        <source>A controller that cuts out would look the same if the return lead sat on the ground and not on the motor&apos;s own return.</source>
        <translation>Ein abschaltender Regler sähe gleich aus, wenn die Minusleitung an Masse saß und nicht am Minus des Motors selbst.</translation>
    </message>
    <message>
        <source>A fault was found.</source>
        <translation>Ein Fehler wurde gefunden.</translation>
    </message>
    <message>
        <source>A pattern alone proves nothing: many such motors run for years</source>
        <translation>Ein Muster allein beweist nichts: viele solche Motoren laufen jahrelang</translation>
    </message>
    <message>
        <source>A plug or ground shaken by the tap would look the same while no voltage tells</source>
        <translation>Ein Stecker oder eine Masse, vom Klopfen erschüttert, sähe gleich aus, solange keine Spannung es sagt</translation>
    </message>
    <message>
        <source>A probe slipped {0} more times from {1} s to {2} s: no voltage of that time is to be trusted.</source>
        <translation>Eine Messspitze rutschte noch {0}-mal ab, von {1} s bis {2} s: keiner Spannung aus dieser Zeit ist zu trauen.</translation>
    </message>
    <message>
        <source>Against it: {0}.</source>
        <translation>Dagegen: {0}.</translation>
    </message>
    <message>
        <source>Airbag wiring behind the dash: make the system safe as the manual says and wait as long as it says; never probe or ohm it; its connectors are often yellow.</source>
        <translation>Airbagleitungen hinter der Armaturentafel: nach Handbuch stilllegen und so lange warten, wie es sagt; nie daran messen, auch kein Ohm; die Stecker sind oft gelb.</translation>
    </message>
    <message>
        <source>Back-probe: go in from the back of the connector; don&apos;t pierce insulation, don&apos;t spread terminals, keep two bare pins from touching.</source>
        <translation>Von hinten messen: von der Rückseite in den Stecker; keine Isolierung durchstechen, Kontakte nicht aufweiten, zwei blanke Stifte nicht berühren lassen.</translation>
    </message>
    <message>
        <source>Bad as well: {0} ({1}).</source>
        <translation>Ebenfalls schlecht: {0} ({1}).</translation>
    </message>
    <message>
        <source>Battery voltage not recorded: drops on the way to the motor were not measured.</source>
        <translation>Batteriespannung nicht aufgezeichnet: Spannungsfälle auf dem Weg zum Motor wurden nicht gemessen.</translation>
    </message>
    <message>
        <source>Begin a new check with the readings that count; what was kept stays.</source>
        <translation>Eine neue Prüfung mit den Messungen beginnen, die zählen; Gespeichertes bleibt.</translation>
    </message>
    <message>
        <source>Check the decimal point, the meter&apos;s range and the circuit chosen.</source>
        <translation>Dezimalkomma, Bereich des Messgeräts und gewählten Stromlauf prüfen.</translation>
    </message>
    <message>
        <source>Check the nodes and figures of the elements between battery and motor.</source>
        <translation>Knoten und Werte der Elemente zwischen Batterie und Motor prüfen.</translation>
    </message>
    <message>
        <source>Clamp empty and shut: take its zero. If current still flows with the fan off: relay output (87) and motor&apos;s return against the battery&apos;s negative post: 87 live with the coil off means the relay sticks; return near 0 V means the controller is shorted. {0}</source>
        <translation>Zange leer und geschlossen: nullen. Fließt bei ausgeschaltetem Gebläse immer noch Strom: Relaisausgang (87) und Minus des Motors gegen den Minuspol der Batterie: 87 unter Spannung ohne Spule heißt, das Relais klebt; Minus nahe 0 V heißt, der Regler ist durchlegiert. {0}</translation>
    </message>
    <message>
        <source>Compare the fuse in the holder with the rating in the manual (same rating and kind only); then the current on high, and at the start with a fast channel. Above 80 % of the rating: drag first, then filter and plug. {0}</source>
        <translation>Die Sicherung im Halter mit dem Nennwert im Handbuch vergleichen (nur gleicher Nennwert und gleiche Art); dann der Strom auf höchster Stufe und beim Anlauf mit schnellem Kanal. Über 80 % des Nennwerts: zuerst Schwergang, dann Filter und Stecker. {0}</translation>
    </message>
    <message>
        <source>Confirm before parts are ordered: {0}</source>
        <translation>Vor der Bestellung bestätigen: {0}</translation>
    </message>
    <message>
        <source>Current although off is commanded{0}: {1}; the circuit stays on, or the clamp was not zeroed.</source>
        <translation>Strom, obwohl Aus geschaltet ist{0}: {1}; der Kreis bleibt an, oder die Zange wurde nicht genullt.</translation>
    </message>
    <message>
        <source>Dead segment{0}: {1} through the motor while {2} stood across it{3}</source>
        <translation>Tote Stelle{0}: {1} durch den Motor, während {2} an ihm anlagen{3}</translation>
    </message>
    <message>
        <source>Do the tap test in full: zero of the clamp, ten seconds still, move the leads (mark it), then at each stop tap the motor lightly and mark it, three times; ten seconds still, zero again.</source>
        <translation>Den Klopftest ganz machen: Zange nullen, zehn Sekunden Ruhe, Leitungen bewegen (markieren), dann bei jedem Stillstand dreimal leicht an den Motor klopfen und es markieren; zehn Sekunden Ruhe, wieder nullen.</translation>
    </message>
    <message>
        <source>Dropouts shorter</source>
        <translation>Aussetzer kürzer</translation>
    </message>
    <message>
        <source>Dropouts shorter than {0} s may have been missed{1}.</source>
        <translation>Aussetzer kürzer als {0} s können entgangen sein{1}.</translation>
    </message>
    <message>
        <source>Engine running: park brake on, out of gear, exhaust led away, hair, sleeves and leads clear of belts and fans.</source>
        <translation>Motor läuft: Feststellbremse an, Gang heraus, Abgase abführen, Haare, Ärmel und Leitungen weg von Riemen und Lüftern.</translation>
    </message>
    <message>
        <source>Enter what the meter shows.</source>
        <translation>Eingeben, was das Messgerät zeigt.</translation>
    </message>
    <message>
        <source>Fan and key off before any plug is parted; leave airbag plugs (usually yellow) alone. {0}</source>
        <translation>Gebläse und Zündung aus, bevor ein Stecker getrennt wird; Airbagstecker (meist gelb) nicht anfassen. {0}</translation>
    </message>
    <message>
        <source>Fan off and key off before unplugging or plugging in: the plug arcs under load, and the spike kills controllers.</source>
        <translation>Gebläse und Zündung aus vor dem Trennen oder Stecken: unter Last zieht der Stecker einen Lichtbogen, und die Spitze zerstört Regler.</translation>
    </message>
    <message>
        <source>Fan on high, all plugged in, meter to the battery&apos;s negative post: battery, both sides of the main fuse, relay input (30), relay output (87), motor feed; each within 0.7 V of the battery; the fault lies before the first that falls. If 87 is dead: coil 86 near battery, 85 near 0 V. Move one plug at a time and mark it. A blown fuse has a cause: same rating only, never bridge it; measure the motor&apos;s current on high afterwards. {0}</source>
        <translation>Gebläse auf höchster Stufe, alles gesteckt, Messgerät gegen den Minuspol der Batterie: Batterie, beide Seiten der Hauptsicherung, Relaiseingang (30), Relaisausgang (87), Plus am Motor; jeweils höchstens 0,7 V unter der Batterie; der Fehler liegt vor dem ersten, der abfällt. Ist 87 tot: Spule 86 nahe Batterie, 85 nahe 0 V. Einen Stecker nach dem anderen bewegen und es markieren. Eine durchgebrannte Sicherung hat eine Ursache: nur gleicher Nennwert, nie überbrücken; danach den Motorstrom auf höchster Stufe messen. {0}</translation>
    </message>
    <message>
        <source>Fan on high, all plugged in, meter to the battery&apos;s negative post: ground pin of the controller below 0.3 V (more: ground wire or stud); then its request. Ground and request good and the motor&apos;s return near the feed: the controller is open. Before a new one is fitted: motor current on high below 80 % of the fuse, as a motor that draws too much kills controllers. {0}</source>
        <translation>Gebläse auf höchster Stufe, alles gesteckt, Messgerät gegen den Minuspol der Batterie: Massestift des Reglers unter 0,3 V (mehr: Masseleitung oder Bolzen); dann seine Ansteuerung. Masse und Ansteuerung gut und Minus des Motors nahe Plus: der Regler ist offen. Bevor ein neuer eingebaut wird: Motorstrom auf höchster Stufe unter 80 % der Sicherung, denn ein Motor, der zu viel zieht, zerstört Regler. {0}</translation>
    </message>
    <message>
        <source>Fan on high: measure straight across each part of the feed: fuse and holder, relay contacts (30 to 87, 0.3 V at most), plug and wire (0.1 to 0.2 V each); the largest is the place. Look for heat. Low speed hides it. {0}</source>
        <translation>Gebläse auf höchster Stufe: direkt über jedem Teil der Zuleitung messen: Sicherung und Halter, Relaiskontakte (30 nach 87, höchstens 0,3 V), Stecker und Leitung (je 0,1 bis 0,2 V); der größte ist die Stelle. Auf Hitze achten. Kleine Stufe verbirgt es. {0}</translation>
    </message>
    <message>
        <source>Fan on high: measure straight from the controller&apos;s ground pin to the battery&apos;s negative post (0.2 V, 0.3 V at most), then each joint and stud; the largest drop is the place. A computer on mains power can be a second ground: run it on its battery. {0}</source>
        <translation>Gebläse auf höchster Stufe: direkt vom Massestift des Reglers zum Minuspol der Batterie messen (0,2 V, höchstens 0,3 V), dann jede Verbindung und jeden Bolzen; der größte Spannungsfall ist die Stelle. Ein Rechner am Netz kann eine zweite Masse sein: mit Akku betreiben. {0}</translation>
    </message>
    <message>
        <source>Fan on the speed named: voltage across the controller and its current; see filter and intake (its air cools it), and the motor&apos;s current on high below 80 % of the fuse. The heat sink burns. {0}</source>
        <translation>Gebläse auf der genannten Stufe: Spannung über dem Regler und sein Strom; Filter und Ansaugung ansehen (die Luft kühlt ihn), und den Motorstrom auf höchster Stufe unter 80 % der Sicherung. Der Kühlkörper ist heiß. {0}</translation>
    </message>
    <message>
        <source>From this recording it can&apos;t be told.</source>
        <translation>Aus dieser Aufzeichnung ist es nicht zu sagen.</translation>
    </message>
    <message>
        <source>Full voltage was read across the motor meanwhile, as the leads were said to sit</source>
        <translation>Derweil wurde volle Spannung am Motor gelesen, so wie die Leitungen laut Angabe sitzen</translation>
    </message>
    <message>
        <source>Full voltage was read across the motor meanwhile, which a controller that cuts out takes away: check where the return lead sat</source>
        <translation>Derweil wurde volle Spannung am Motor gelesen, die ein abschaltender Regler wegnimmt: prüfen, wo die Minusleitung saß</translation>
    </message>
    <message>
        <source>Fused jumper only, with a fuse no larger than the circuit&apos;s own; never across a fuse that has blown, never across the motor or another load; the fan may start at once.</source>
        <translation>Nur abgesicherte Brücke, die Sicherung nicht größer als die des Kreises; nie über eine durchgebrannte Sicherung, nie über den Motor oder eine andere Last; das Gebläse kann sofort anlaufen.</translation>
    </message>
    <message>
        <source>Fuses: same rating and type only; find out why one opened before a new one goes in.</source>
        <translation>Sicherungen: nur gleicher Nennwert und gleiche Art; erst klären, warum eine auslöste, dann eine neue einsetzen.</translation>
    </message>
    <message>
        <source>Give each reading and each sign a number of its own.</source>
        <translation>Jeder Messung und jedem Zeichen eine eigene Nummer geben.</translation>
    </message>
    <message>
        <source>HOLD is off</source>
        <translation>HOLD ist aus</translation>
    </message>
    <message>
        <source>HOLD is on</source>
        <translation>HOLD ist an</translation>
    </message>
    <message>
        <source>Hot parts: controllers and resistor packs burn skin long after running; let them cool.</source>
        <translation>Heiße Teile: Regler und Widerstände verbrennen die Haut noch lange nach dem Lauf; abkühlen lassen.</translation>
    </message>
    <message>
        <source>Hybrid or electric: stay off orange cables and anything above 60 V DC; only the 12 V or 24 V fan circuit, and only if you are trained for the vehicle.</source>
        <translation>Hybrid oder Elektro: von orangen Kabeln und allem über 60 V Gleichspannung fernbleiben; nur der Gebläsekreis mit 12 V oder 24 V, und nur mit Unterweisung für das Fahrzeug.</translation>
    </message>
    <message>
        <source>If it holds, the fault may have come or gone in between.</source>
        <translation>Wenn es bleibt, kann der Fehler dazwischen gekommen oder gegangen sein.</translation>
    </message>
    <message>
        <source>If the fan fails only at times, record it for long with the complaint there, and tap and wiggle while it records (meterlog record).</source>
        <translation>Fällt das Gebläse nur zeitweise aus, lange mit vorhandenem Fehler aufzeichnen und dabei klopfen und wackeln.</translation>
    </message>
    <message>
        <source>It came back upon taps on the motor, beyond chance</source>
        <translation>Er kam auf Klopfen an den Motor zurück, mehr als durch Zufall</translation>
    </message>
    <message>
        <source>It draws {0} {1} ({2}), beyond the uncertainty.</source>
        <translation>Es zieht {0} {1} ({2}), über die Unsicherheit hinaus.</translation>
    </message>
    <message>
        <source>It is not {0}</source>
        <translation>Es ist nicht {0}</translation>
    </message>
    <message>
        <source>It is {0}</source>
        <translation>Es ist {0}</translation>
    </message>
    <message>
        <source>It ran for {0} s and no dropout was seen; whether its current is right was not judged.</source>
        <translation>Er lief {0} s, und kein Aussetzer war zu sehen; ob sein Strom stimmt, wurde nicht beurteilt.</translation>
    </message>
    <message>
        <source>Keep fingers and leads away from the moving wheel.</source>
        <translation>Finger und Leitungen weg vom drehenden Rad.</translation>
    </message>
    <message>
        <source>Key off: turn the wheel by hand: rub, noise, stiffness? Look at the plug for heat and at the case drain for water. Then the current on high at the same voltage with filter and housing as in use: below 80 % of the fuse, and within a tenth of a known good motor. Fit no new controller beside a motor that draws too much. {0} {1}</source>
        <translation>Zündung aus: das Rad von Hand drehen: Schleifen, Geräusch, schwer? Den Stecker auf Hitze ansehen und den Ablauf auf Wasser. Dann der Strom auf höchster Stufe bei gleicher Spannung, mit Filter und Gehäuse wie im Betrieb: unter 80 % der Sicherung und höchstens ein Zehntel neben einem als gut bekannten Motor. Keinen neuen Regler neben einen Motor einbauen, der zu viel zieht. {0} {1}</translation>
    </message>
    <message>
        <source>Key off: turn the wheel by hand: stuck or stiff: motor or something in the housing. Free: measure again on high from rest. On low a held rotor draws little more than usual, so judge on high, and briefly. {0} {1}</source>
        <translation>Zündung aus: das Rad von Hand drehen: fest oder schwer: Motor oder etwas im Gehäuse. Frei: auf höchster Stufe aus dem Stand noch einmal messen. Auf kleiner Stufe zieht ein blockierter Läufer kaum mehr als sonst, also auf höchster beurteilen, und kurz. {0} {1}</translation>
    </message>
    <message>
        <source>Look and listen: does the fan run?</source>
        <translation>Hinsehen und hinhören: läuft das Gebläse?</translation>
    </message>
    <message>
        <source>Look for the cause: {0}</source>
        <translation>Die Ursache suchen: {0}</translation>
    </message>
    <message>
        <source>Measure again with feed, return and current of the motor recorded. {0}</source>
        <translation>Noch einmal messen, mit Plus, Minus und Strom des Motors aufgezeichnet. {0}</translation>
    </message>
    <message>
        <source>Measure {0} against the battery negative post</source>
        <translation>{0} gegen den Minuspol der Batterie messen</translation>
    </message>
    <message>
        <source>Measure {0}, a probe at each end</source>
        <translation>{0} messen, an jedem Ende eine Spitze</translation>
    </message>
    <message>
        <source>Meter: leads in the V jack, never left in the current jack, where they are a short; meter and leads of CAT III 600 V or better; a clamp for the motor&apos;s current, as a starting fan opens the meter&apos;s fuse.</source>
        <translation>Messgerät: Leitungen in der Buchse V, nie in der Strombuchse lassen, wo sie ein Kurzschluss sind; Messgerät und Leitungen mindestens CAT III 600 V; für den Motorstrom eine Zange, denn ein anlaufendes Gebläse löst die Sicherung des Messgeräts aus.</translation>
    </message>
    <message>
        <source>Module pins: 10 MΩ meter only; no test lamp, no ohmmeter while there is power.</source>
        <translation>Stifte von Steuergeräten: nur ein Messgerät mit 10 MΩ; keine Prüflampe, kein Ohmmeter, solange Spannung anliegt.</translation>
    </message>
    <message>
        <source>Most hand meters have 10 MΩ.</source>
        <translation>Die meisten Handmessgeräte haben 10 MΩ.</translation>
    </message>
    <message>
        <source>Most likely: {0}.</source>
        <translation>Am wahrscheinlichsten: {0}.</translation>
    </message>
    <message>
        <source>Motor current</source>
        <translation>Motorstrom</translation>
    </message>
    <message>
        <source>Motor current not recorded: nothing can be said about the motor.</source>
        <translation>Motorstrom nicht aufgezeichnet: über den Motor ist nichts zu sagen.</translation>
    </message>
    <message>
        <source>Motor feed not recorded: a feed that goes can&apos;t be told from the rest.</source>
        <translation>Plus des Motors nicht aufgezeichnet: ein ausfallendes Plus ist nicht vom Rest zu unterscheiden.</translation>
    </message>
    <message>
        <source>Motor return not recorded: an open motor can&apos;t be told from an open ground side.</source>
        <translation>Minus des Motors nicht aufgezeichnet: ein offener Motor ist nicht von einer offenen Masseseite zu unterscheiden.</translation>
    </message>
    <message>
        <source>Moving fan: keep fingers, hair, sleeves and leads out of the wheel; it may start by itself when a fault comes and goes.</source>
        <translation>Laufendes Gebläse: Finger, Haare, Ärmel und Leitungen weg vom Rad; es kann von selbst anlaufen, wenn ein Fehler kommt und geht.</translation>
    </message>
    <message>
        <source>Moving it may have shaken a probe or the motor as well</source>
        <translation>Das Bewegen kann auch eine Messspitze oder den Motor erschüttert haben</translation>
    </message>
    <message>
        <source>New ({0}) against old ({1}).{2}</source>
        <translation>Neu ({0}) gegen alt ({1}).{2}</translation>
    </message>
    <message>
        <source>No commanded</source>
        <translation>Keine geschaltete</translation>
    </message>
    <message>
        <source>No commanded speed was recorded: nothing is judged speed by speed.</source>
        <translation>Keine geschaltete Stufe aufgezeichnet: nichts wird Stufe für Stufe beurteilt.</translation>
    </message>
    <message>
        <source>No commanded speed was recorded: nothing is judged speed by speed. {0} levels of current were found; accepted as steps (review --accept-steps, or C in the window) they are judged.</source>
        <translation>Keine geschaltete Stufe aufgezeichnet: nichts wird Stufe für Stufe beurteilt. {0} Stromniveaus wurden gefunden; als Stufen übernommen (C) werden sie beurteilt.</translation>
    </message>
    <message>
        <source>No current for {0} s with no command recorded: whether the fan was asked to run then is not known.</source>
        <translation>Kein Strom für {0} s ohne aufgezeichnete Schaltung: ob das Gebläse da laufen sollte, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>No current{0}: {1}; beside a command for off: perhaps that was recorded {2} late or early{3}</source>
        <translation>Kein Strom{0}: {1}; neben einer Schaltung auf Aus: vielleicht wurde sie {2} zu spät oder zu früh aufgezeichnet{3}</translation>
    </message>
    <message>
        <source>No current{0}: {1}; {2}{3}</source>
        <translation>Kein Strom{0}: {1}; {2}{3}</translation>
    </message>
    <message>
        <source>No data{0}: {1}{2} What the motor did then is not known.</source>
        <translation>Keine Daten{0}: {1}{2} Was der Motor da tat, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>No difference beyond the uncertainty is seen {0}{1}.</source>
        <translation>Kein Unterschied über die Unsicherheit hinaus {0}{1}.</translation>
    </message>
    <message>
        <source>No limits</source>
        <translation>Keine Grenzwerte</translation>
    </message>
    <message>
        <source>No limits stated for speed {0}: its current is not judged.</source>
        <translation>Für Stufe {0} sind keine Grenzwerte angegeben: ihr Strom wird nicht beurteilt.</translation>
    </message>
    <message>
        <source>No motor-current channel: nothing can be said about the motor.</source>
        <translation>Kein Kanal für den Motorstrom: über den Motor ist nichts zu sagen.</translation>
    </message>
    <message>
        <source>No reading showed a dropout itself</source>
        <translation>Kein Messwert zeigte selbst einen Aussetzer</translation>
    </message>
    <message>
        <source>No start from rest was recorded: nothing is said of the start-up current.</source>
        <translation>Kein Anlauf aus dem Stand aufgezeichnet: zum Anlaufstrom ist nichts gesagt.</translation>
    </message>
    <message>
        <source>No zero was taken of {0}, which is read by a clamp: it may be off by some tenths of an ampere, which the uncertainties do not hold. With the clamp empty and shut, take one (z, or --take-zero {1}).</source>
        <translation>Für {0}, mit einer Zange gemessen, wurde kein Nullpunkt genommen: es kann um einige Zehntel Ampere falsch sein, was die Unsicherheiten nicht enthalten. Bei leerer, geschlossener Zange einen nehmen (Z).</translation>
    </message>
    <message>
        <source>Nobody stated {0}: the comparison holds only if it was the same.</source>
        <translation>Niemand hat {0} angegeben: der Vergleich gilt nur, wenn es gleich war.</translation>
    </message>
    <message>
        <source>Not recorded: {0}. Some causes can&apos;t be told apart without.</source>
        <translation>Nicht aufgezeichnet: {0}. Manche Ursachen lassen sich ohne das nicht unterscheiden.</translation>
    </message>
    <message>
        <source>Not ruled out beside it: {0}.</source>
        <translation>Daneben nicht ausgeschlossen: {0}.</translation>
    </message>
    <message>
        <source>Not ruled out: {0}</source>
        <translation>Nicht ausgeschlossen: {0}</translation>
    </message>
    <message>
        <source>Not the same on both sides: {0}; what that may do is taken out by the voltage or in the uncertainty.</source>
        <translation>Nicht auf beiden Seiten gleich: {0}; was das ausmachen kann, ist über die Spannung herausgerechnet oder in der Unsicherheit.</translation>
    </message>
    <message>
        <source>Not tried</source>
        <translation>Nicht versucht</translation>
    </message>
    <message>
        <source>Not tried: speed {0}.</source>
        <translation>Nicht versucht: Stufe {0}.</translation>
    </message>
    <message>
        <source>Note the rhythm, the controller&apos;s temperature and the request; turn the wheel by hand (key off): does it rub or bind? See filter and intake. Motor current on high below 80 % of the fuse? If not, the motor makes the controller cut out; if it is, run the motor from a fused lead (20 to 30 A, heavy wire), wheel clear, for a short time: steady there means the controller is at fault. The heat sink burns. {0} {1}</source>
        <translation>Rhythmus, Temperatur des Reglers und Ansteuerung notieren; das Rad von Hand drehen (Zündung aus): schleift oder klemmt es? Filter und Ansaugung ansehen. Motorstrom auf höchster Stufe unter 80 % der Sicherung? Wenn nicht, bringt der Motor den Regler zum Abschalten; wenn ja, den Motor kurz an einer abgesicherten Leitung betreiben (20 bis 30 A, dicke Leitung), Rad frei: läuft er dort ruhig, ist der Regler schuld. Der Kühlkörper ist heiß. {0} {1}</translation>
    </message>
    <message>
        <source>Nothing electrical is found wrong at this moment ({0}). {1} No part is to be ordered on this.</source>
        <translation>Elektrisch ist im Augenblick nichts Falsches zu finden ({0}). {1} Darauf ist kein Teil zu bestellen.</translation>
    </message>
    <message>
        <source>Nothing was found wrong.</source>
        <translation>Nichts Falsches wurde gefunden.</translation>
    </message>
    <message>
        <source>Nothing was read</source>
        <translation>Nichts wurde gelesen</translation>
    </message>
    <message>
        <source>Nothing within reach tells more. It stays open between {0}.</source>
        <translation>Nichts Zugängliches sagt mehr. Offen bleibt: {0}.</translation>
    </message>
    <message>
        <source>On high: voltage across the motor within 0.7 V of the battery? If not, follow the drop from the battery to the feed and from the return to the ground. If it is: filter, flaps, wheel on its shaft; then brushes (unsteady current). {0} {1}</source>
        <translation>Auf höchster Stufe: Spannung am Motor höchstens 0,7 V unter der Batterie? Wenn nicht, dem Spannungsfall von der Batterie zum Plus und vom Minus zur Masse folgen. Wenn ja: Filter, Klappen, Rad auf der Welle; dann die Bürsten (unruhiger Strom). {0} {1}</translation>
    </message>
    <message>
        <source>On {0} of {1} made while the current was gone, it returned{2} within {3} s (± {4} s){5}</source>
        <translation>Bei {0} von {1}, während der Strom weg war, kam er{2} binnen {3} s (± {4} s) zurück{5}</translation>
    </message>
    <message>
        <source>On {0} of {1} made while the motor ran, its current went within 2 s ({2}).</source>
        <translation>Bei {0} von {1}, während der Motor lief, ging der Strom binnen 2 s weg ({2}).</translation>
    </message>
    <message>
        <source>Put that right first, and measure again: nothing is told of the vehicle before.</source>
        <translation>Das zuerst in Ordnung bringen und neu messen: vorher ist über das Fahrzeug nichts gesagt.</translation>
    </message>
    <message>
        <source>Record half a second or more at a steady speed with a channel of 7,000 readings/s or more, the motor on plain direct voltage, twice: the same bar again? A pattern alone is no reason to replace a motor: it must go with a dropout. {0}</source>
        <translation>Eine halbe Sekunde oder mehr bei ruhiger Stufe mit einem Kanal von 7.000 Messwerten/s oder mehr aufzeichnen, den Motor an glatter Gleichspannung, zweimal: wieder dieselbe Lamelle? Ein Muster allein ist kein Grund, einen Motor zu tauschen: es muss mit einem Aussetzer zusammengehen. {0}</translation>
    </message>
    <message>
        <source>Record the current with a faster channel (or the meter&apos;s peak mode), fan on high, doors shut; tap the motor lightly and mark each tap: a true dropout reads next to nothing. {0} {1}</source>
        <translation>Den Strom mit einem schnelleren Kanal (oder der Spitzenwertfunktion) aufzeichnen, Gebläse auf höchster Stufe, Türen zu; leicht an den Motor klopfen und jedes Klopfen markieren: ein echter Aussetzer zeigt fast nichts. {0} {1}</translation>
    </message>
    <message>
        <source>Record the motor&apos;s feed and return, both against the battery&apos;s negative post, and wait for the fault: feed gone: fuse, relay, plug; feed there and return near 0 V: motor open; both near the battery: ground side open. {0}</source>
        <translation>Plus und Minus des Motors aufzeichnen, beide gegen den Minuspol der Batterie, und auf den Fehler warten: Plus weg: Sicherung, Relais, Stecker; Plus da und Minus nahe 0 V: Motor offen; beide nahe der Batterie: Masseseite offen. {0}</translation>
    </message>
    <message>
        <source>Record the motor&apos;s return (ground side) as well, against the battery&apos;s negative post, and wait for the fault: near 0 V with no current means the motor is open; near the feed means the ground side is (controller, its ground or its request). {0}</source>
        <translation>Auch das Minus des Motors (Masseseite) aufzeichnen, gegen den Minuspol der Batterie, und auf den Fehler warten: nahe 0 V ohne Strom heißt Motor offen; nahe Plus heißt Masseseite offen (Regler, seine Masse oder Ansteuerung). {0}</translation>
    </message>
    <message>
        <source>Record the request at the controller together with the current; manual mode, one speed. If the request goes first: control head, its wiring, a sensor, or load shedding. Polarity and values differ by model: compare with the manual. A meter of 10 Mohm only, no test lamp on module pins. {0}</source>
        <translation>Die Ansteuerung am Regler zusammen mit dem Strom aufzeichnen; Handbetrieb, eine Stufe. Geht die Ansteuerung zuerst: Bedienteil, seine Leitungen, ein Fühler oder Lastabwurf. Polung und Werte je nach Modell: mit dem Handbuch vergleichen. Nur ein Messgerät mit 10 MOhm, keine Prüflampe an Steuergeräten. {0}</translation>
    </message>
    <message>
        <source>Repeat it as well.</source>
        <translation>Auch wiederholen.</translation>
    </message>
    <message>
        <source>Repeat it too if reading {0} stands.</source>
        <translation>Auch wiederholen, falls Messung {0} steht.</translation>
    </message>
    <message>
        <source>Repeat reading {0} first: a probe that slipped, another point, another setting of key, speed or plugs?</source>
        <translation>Zuerst Messung {0} wiederholen: eine abgerutschte Spitze, ein anderer Punkt, Zündung, Stufe oder Stecker anders?</translation>
    </message>
    <message>
        <source>Repeat reading {0}. </source>
        <translation>Messung {0} wiederholen. </translation>
    </message>
    <message>
        <source>Rotor held{0}: {1}{2}, held from {3} A on{4}.</source>
        <translation>Läufer blockiert{0}: {1}{2}, blockiert ab {3} A{4}.</translation>
    </message>
    <message>
        <source>Speed {0} draws {1} when running; {2}</source>
        <translation>Stufe {0} zieht {1} im Lauf; {2}</translation>
    </message>
    <message>
        <source>Speed {0}: nothing to judge; start-up, missing current and the change to the next speed leave no steady running ({1}).</source>
        <translation>Stufe {0}: nichts zu beurteilen; Anlauf, fehlender Strom und der Wechsel zur nächsten Stufe lassen keinen ruhigen Lauf übrig ({1}).</translation>
    </message>
    <message>
        <source>Speed {0}: the current was not read ({1}).</source>
        <translation>Stufe {0}: der Strom wurde nicht gelesen ({1}).</translation>
    </message>
    <message>
        <source>State the meter&apos;s accuracy, or leave it out.</source>
        <translation>Die Genauigkeit des Messgeräts angeben oder weglassen.</translation>
    </message>
    <message>
        <source>Switch to this from key off and listen: does the relay click?</source>
        <translation>Von Zündung aus hierher schalten und hinhören: klickt das Relais?</translation>
    </message>
    <message>
        <source>Take it out. A fused jumper goes round one contact or connection only.</source>
        <translation>Herausnehmen. Eine abgesicherte Brücke umgeht nur einen Kontakt oder eine Verbindung.</translation>
    </message>
    <message>
        <source>Tap the motor&apos;s housing lightly, three to five times: does the fan start?</source>
        <translation>Drei- bis fünfmal leicht an das Motorgehäuse klopfen: läuft das Gebläse an?</translation>
    </message>
    <message>
        <source>The accuracy of the current channel is not stated: uncertainties hold the scatter of the readings alone.</source>
        <translation>Die Genauigkeit des Stromkanals ist nicht angegeben: die Unsicherheiten enthalten nur die Streuung der Messwerte.</translation>
    </message>
    <message>
        <source>The accuracy of the {0} at {1} is not stated: uncertainties hold the meter&apos;s alone. State it from its data sheet (--sensor-accuracy {2}=PERCENT+AMPERES).</source>
        <translation>Die Genauigkeit des Aufnehmers ({0}) an {1} ist nicht angegeben: die Unsicherheiten enthalten nur die des Messgeräts. Nach Datenblatt angeben ({2}).</translation>
    </message>
    <message>
        <source>The accuracy of the {0} at {1} is not stated: uncertainties hold the meter&apos;s alone. State it from its data sheet on the Meters page.</source>
        <translation>Die Genauigkeit des Aufnehmers ({0}) an {1} ist nicht angegeben: die Unsicherheiten enthalten nur die des Messgeräts. Nach Datenblatt auf der Seite Messgeräte angeben.</translation>
    </message>
    <message>
        <source>The command goes, and the current with it: control head, its wiring, a sensor, or it was switched off on purpose.</source>
        <translation>Die Ansteuerung geht weg und der Strom mit ihr: Bedienteil, seine Leitungen, ein Fühler, oder es wurde absichtlich ausgeschaltet.</translation>
    </message>
    <message>
        <source>The commands lie far from the readings in time: is their zero the same? The verdicts rest on them.</source>
        <translation>Die Schaltungen liegen zeitlich weit von den Messwerten: ist ihr Nullpunkt derselbe? Die Urteile beruhen darauf.</translation>
    </message>
    <message>
        <source>The commutator&apos;s bars could not be seen: {0}.</source>
        <translation>Die Lamellen des Kommutators waren nicht zu sehen: {0}.</translation>
    </message>
    <message>
        <source>The commutator&apos;s bars were not looked at: that needs 7,000 readings/s or more.</source>
        <translation>Die Lamellen des Kommutators wurden nicht betrachtet: dafür braucht es 7.000 Messwerte/s oder mehr.</translation>
    </message>
    <message>
        <source>The controller&apos;s request not recorded: a lost command looks like a lost ground.</source>
        <translation>Die Ansteuerung des Reglers nicht aufgezeichnet: eine ausgefallene Ansteuerung sieht aus wie eine ausgefallene Masse.</translation>
    </message>
    <message>
        <source>The current channel reads nothing{0}: {1}; but {2}. The clamp or its meter is to be doubted before the motor.</source>
        <translation>Der Stromkanal zeigt nichts{0}: {1}; aber {2}. Die Zange oder ihr Messgerät ist eher zu bezweifeln als der Motor.</translation>
    </message>
    <message>
        <source>The current comes back upon taps on the motor: consistent with a brush or bar that opens.</source>
        <translation>Der Strom kommt auf Klopfen an den Motor zurück: passend zu einer öffnenden Bürste oder Lamelle.</translation>
    </message>
    <message>
        <source>The current goes and comes back by itself in a rhythm: consistent with a controller that cuts out and tries again, for heat or for a motor that drags; a brush has no rhythm.</source>
        <translation>Der Strom geht und kommt von selbst in einem Rhythmus: passend zu einem Regler, der abschaltet und es wieder versucht, wegen Hitze oder eines schwergängigen Motors; eine Bürste hat keinen Rhythmus.</translation>
    </message>
    <message>
        <source>The current goes while the fan is asked to run; {0}.</source>
        <translation>Der Strom geht weg, obwohl das Gebläse laufen soll; {0}.</translation>
    </message>
    <message>
        <source>The current is consistent with dropouts that this meter is too slow to show; none was measured.</source>
        <translation>Der Strom passt zu Aussetzern, die dieses Messgerät nicht zeigen kann, weil es zu langsam ist; gemessen wurde keiner.</translation>
    </message>
    <message>
        <source>The current is lost outside the motor after all; {0}.</source>
        <translation>Der Strom geht doch außerhalb des Motors verloren; {0}.</translation>
    </message>
    <message>
        <source>The current went when this was moved at {0} s: {1}</source>
        <translation>Der Strom ging weg, als bei {0} s dies bewegt wurde: {1}</translation>
    </message>
    <message>
        <source>The feed of the motor goes away: fuse, relay, connector or wire ahead of the motor.</source>
        <translation>Das Plus des Motors geht weg: Sicherung, Relais, Stecker oder Leitung vor dem Motor.</translation>
    </message>
    <message>
        <source>The feed reads negative ({0} s to {1} s): the leads of that channel are the wrong way round. Swap them, or say so (inverted).</source>
        <translation>Plus zeigt negativ ({0} s bis {1} s): die Leitungen dieses Kanals sind vertauscht. Tauschen, oder als verdreht angeben.</translation>
    </message>
    <message>
        <source>The first and the last zero of {0} agree within {1} A (less than {2} A is wanted).</source>
        <translation>Der erste und der letzte Nullpunkt von {0} stimmen auf {1} A überein (gewünscht ist unter {2} A).</translation>
    </message>
    <message>
        <source>The ground side of the motor opens: controller, its request, its ground or a connector.</source>
        <translation>Die Masseseite des Motors öffnet: Regler, seine Ansteuerung, seine Masse oder ein Stecker.</translation>
    </message>
    <message>
        <source>The motor current is typed by hand: what it did from one reading to the next, a dropout above all, is not known.</source>
        <translation>Der Motorstrom ist von Hand eingetippt: was er zwischen zwei Werten tat, vor allem ein Aussetzer, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>The motor current reads negative: the clamp is on the wrong way round. Turn it, or say so (inverted); its size is judged all the same.</source>
        <translation>Der Motorstrom zeigt negativ: die Zange sitzt verkehrt herum. Drehen, oder als verdreht angeben; seine Größe wird trotzdem beurteilt.</translation>
    </message>
    <message>
        <source>The motor drew what it should, and no dropout was seen: {0}.</source>
        <translation>Der Motor zog, was er soll, und kein Aussetzer war zu sehen: {0}.</translation>
    </message>
    <message>
        <source>The motor is open inside in a rhythm: a thermal cut-out of its own would do that.</source>
        <translation>Der Motor ist innen in einem Rhythmus offen: ein eigener Thermoschalter täte das.</translation>
    </message>
    <message>
        <source>The motor opens inside, at a brush or the commutator: full voltage stands across it, and next to no current flows.</source>
        <translation>Der Motor öffnet innen, an einer Bürste oder am Kommutator: volle Spannung liegt an ihm an, und fast kein Strom fließt.</translation>
    </message>
    <message>
        <source>The motor opens inside, in a rhythm: full voltage stands across it, and next to no current flows; consistent with a thermal switch of its own, for heat or drag, or with a brush.</source>
        <translation>Der Motor öffnet innen, in einem Rhythmus: volle Spannung liegt an ihm an, und fast kein Strom fließt; passend zu einem eigenen Thermoschalter, wegen Hitze oder Schwergang, oder zu einer Bürste.</translation>
    </message>
    <message>
        <source>The motor voltage reads negative: feed and return are the wrong way round. Swap the two leads, or their roles.</source>
        <translation>Die Motorspannung zeigt negativ: Plus und Minus des Motors sind vertauscht. Die beiden Leitungen tauschen oder ihre Rollen.</translation>
    </message>
    <message>
        <source>The motor was not seen running.</source>
        <translation>Der Motor wurde nicht laufen gesehen.</translation>
    </message>
    <message>
        <source>The motor&apos;s own figures were not determined: {0}.</source>
        <translation>Die eigenen Größen des Motors wurden nicht bestimmt: {0}.</translation>
    </message>
    <message>
        <source>speed {0}</source>
        <translation>Stufe {0}</translation>
    </message>
    <message>
        <source>The readings are too slow for the start-up peak: the true one was higher.</source>
        <translation>Die Messwerte sind zu langsam für die Anlaufspitze: die wahre war höher.</translation>
    </message>
    <message>
        <source> (carried for {0} h)</source>
        <translation> ({0} h lang getragen)</translation>
    </message>
    <message>
        <source> (opens after {0} to {1} s)</source>
        <translation> (löst nach {0} bis {1} s aus)</translation>
    </message>
    <message>
        <source> (opens by {0} s)</source>
        <translation> (löst bis {0} s aus)</translation>
    </message>
    <message>
        <source> Measured by common steps; {0}.</source>
        <translation> Nach gemeinsamen Stufen gemessen; {0}.</translation>
    </message>
    <message>
        <source> at speeds {0}</source>
        <translation> bei den Stufen {0}</translation>
    </message>
    <message>
        <source> at speeds {0} and {1}</source>
        <translation> bei den Stufen {0} und {1}</translation>
    </message>
    <message>
        <source>({0} more like it)</source>
        <translation>({0} weitere dieser Art)</translation>
    </message>
    <message>
        <source>, and the motor voltage is not read in both: charge it, or measure the motor voltage</source>
        <translation>, und die Motorspannung wird nicht in beiden gelesen: laden, oder die Motorspannung messen</translation>
    </message>
    <message>
        <source>, as what is not in could turn the verdict over</source>
        <translation>, da Nichtenthaltenes das Urteil umkehren könnte</translation>
    </message>
    <message>
        <source>, not all of them compared with published sheets</source>
        <translation>, nicht alle davon mit veröffentlichten Blättern verglichen</translation>
    </message>
    <message>
        <source>12.4 V against 13.9 V makes 20 % of current, the commonest false difference</source>
        <translation>12,4 V gegen 13,9 V machen 20 % Strom aus, der häufigste falsche Unterschied</translation>
    </message>
    <message>
        <source>; brought to the same motor voltage, that is taken out</source>
        <translation>; auf dieselbe Motorspannung gebracht, ist das herausgerechnet</translation>
    </message>
    <message>
        <source>; say whether the engine ran</source>
        <translation>; angeben, ob der Fahrzeugmotor lief</translation>
    </message>
    <message>
        <source>At the highest speed {0} V stood across the old motor and {1} V across the new one: these are different supplies, or a reading is wrong. Check where the probes were, and the nominal voltage.</source>
        <translation>Auf höchster Stufe lagen am alten Motor {0} V und am neuen {1} V an: das sind verschiedene Bordnetze, oder ein Messwert ist falsch. Prüfen, wo die Messspitzen saßen, und die Nennspannung.</translation>
    </message>
    <message>
        <source>A{0} may open by what was seen and need not: can&apos;t tell. The current stood {1}. Between the rows taken as a line in logarithms. The opening times of the very fuse would settle it.</source>
        <translation>Nach dem Gelesenen kann A{0} auslösen und muss nicht: nicht zu sagen. Der Strom stand {1}. Zwischen den Zeilen als Gerade in Logarithmen. Die Auslösezeiten genau dieser Sicherung würden es klären.</translation>
    </message>
    <message>
        <source>By what was seen no single start can open {0}; but {1} starts went above {2} % of the rating ({3} A), and what heat is left in the fuse from one to the next adds up: can&apos;t tell.</source>
        <translation>Nach dem Gelesenen kann kein einzelner Anlauf {0} auslösen; aber {1} Anläufe gingen über {2} % des Nennwerts ({3} A), und die Restwärme in der Sicherung addiert sich: nicht zu sagen.</translation>
    </message>
    <message>
        <source>By what was seen {0} can&apos;t open: it stands nearest to it at {1} % ({2} A), {3} s of the {4} s it lasts at least: pass.</source>
        <translation>Nach dem Gelesenen kann {0} nicht auslösen: am nächsten kommt es bei {1} % ({2} A), {3} s der {4} s, die sie mindestens hält: bestanden.</translation>
    </message>
    <message>
        <source>Differs</source>
        <translation>Anders</translation>
    </message>
    <message>
        <source>Differs: the battery had {0} V, now {1} V: {2}.</source>
        <translation>Anders: die Batterie hatte {0} V, jetzt {1} V: {2}.</translation>
    </message>
    <message>
        <source>Heat in the controller: can&apos;t tell; {0}.</source>
        <translation>Wärme im Regler: nicht zu sagen; {0}.</translation>
    </message>
    <message>
        <source>Heat in the controller: {0}.</source>
        <translation>Wärme im Regler: {0}.</translation>
    </message>
    <message>
        <source>How well the times of readings typed by hand agree with the others is not known: which of two edges close to each other came first can&apos;t be told from them.</source>
        <translation>Wie gut die Zeiten eingetippter Werte zu den anderen passen, ist nicht bekannt: welche von zwei nahen Flanken zuerst kam, ist daraus nicht zu sagen.</translation>
    </message>
    <message>
        <source>How well the times of {0} agree is not known: which of two edges close to each other came first can&apos;t be told from them.</source>
        <translation>Wie gut die Zeiten von {0} zueinander passen, ist nicht bekannt: welche von zwei nahen Flanken zuerst kam, ist daraus nicht zu sagen.</translation>
    </message>
    <message>
        <source>NOT COMPARABLE</source>
        <translation>NICHT VERGLEICHBAR</translation>
    </message>
    <message>
        <source>Next: {0}</source>
        <translation>Als Nächstes: {0}</translation>
    </message>
    <message>
        <source>No zero of {0} was taken: {1}</source>
        <translation>Kein Nullpunkt genommen ({0}): {1}</translation>
    </message>
    <message>
        <source>Not stated: the battery had {0} V; say what it has now.</source>
        <translation>Nicht angegeben: die Batterie hatte {0} V; angeben, was sie jetzt hat.</translation>
    </message>
    <message>
        <source>Not stated: {0} was {1}; say what it is now.</source>
        <translation>Nicht angegeben: {0} war {1}; angeben, was es jetzt ist.</translation>
    </message>
    <message>
        <source>Opening of {0}: can&apos;t tell, as {1}.</source>
        <translation>Auslösen von {0}: nicht zu sagen, da {1}.</translation>
    </message>
    <message>
        <source>Steady load of the {0} A fuse: can&apos;t tell; no speed is known to have been run long enough to be steady.</source>
        <translation>Dauerlast der {0}-A-Sicherung: nicht zu sagen; von keiner Stufe ist bekannt, dass sie lange genug ruhig lief.</translation>
    </message>
    <message>
        <source>Steady load on {0}: {1} of the {2} A fuse&apos;s rating{3}; allowed {4} %: {5}.</source>
        <translation>Dauerlast auf {0}: {1} des Nennwerts der {2}-A-Sicherung{3}; erlaubt {4} %: {5}.</translation>
    </message>
    <message>
        <source>Taking the zero of {0}: leave the clamp empty and shut for {1} s.</source>
        <translation>Nullpunkt wird genommen ({0}): die Zange {1} s lang leer und geschlossen lassen.</translation>
    </message>
    <message>
        <source>The current never reached {0} % of the rating ({1} A): by what was seen {2} can&apos;t open: pass.</source>
        <translation>Der Strom erreichte nie {0} % des Nennwerts ({1} A): nach dem Gelesenen kann {2} nicht auslösen: bestanden.</translation>
    </message>
    <message>
        <source>The current stood at {0} % of the rating ({1} A) or above for {2} s (at least {3} s); {4} opens by {5} s at that</source>
        <translation>Der Strom stand {2} s lang (mindestens {3} s) bei {0} % des Nennwerts ({1} A) oder darüber; {4} löst dabei bis {5} s aus</translation>
    </message>
    <message>
        <source>The readings can&apos;t be taken as they stand. {0}</source>
        <translation>Die Messwerte können so nicht genommen werden. {0}</translation>
    </message>
    <message>
        <source>The ripple is consistent with a commutator bar that carries too little current.</source>
        <translation>Die Welligkeit passt zu einer Kommutatorlamelle, die zu wenig Strom führt.</translation>
    </message>
    <message>
        <source>The tap test falls short of the accepted form in: {0}</source>
        <translation>Dem Klopftest fehlt zur anerkannten Form: {0}</translation>
    </message>
    <message>
        <source>The times of {0} agree to {1}: an edge of one against an edge of the other is known no better than that.</source>
        <translation>Die Zeiten von {0} passen auf {1} zueinander: genauer ist eine Flanke des einen gegen eine des anderen nicht bekannt.</translation>
    </message>
    <message>
        <source>The vehicle&apos;s service manual comes first.</source>
        <translation>Das Werkstatthandbuch des Fahrzeugs geht vor.</translation>
    </message>
    <message>
        <source>The vehicle&apos;s service manual, local codes and licensed practice come before anything shown here.</source>
        <translation>Das Werkstatthandbuch, örtliche Vorschriften und zugelassene Fachpraxis gehen allem hier Gezeigten vor.</translation>
    </message>
    <message>
        <source>The zero of {0} ({1} {2}) was typed, so nobody knows how old it is. {3}</source>
        <translation>Der Nullpunkt von {0} ({1} {2}) wurde eingetippt, also weiß niemand, wie alt er ist. {3}</translation>
    </message>
    <message>
        <source>The zero of {0} drifted by {1} A up to {2} s (less than {3} A is wanted): currents in between may be off by as much. Let the clamp warm up, and measure again.</source>
        <translation>Der Nullpunkt von {0} lief bis {2} s um {1} A weg (gewünscht ist unter {3} A): Ströme dazwischen können um so viel falsch sein. Die Zange warm werden lassen und neu messen.</translation>
    </message>
    <message>
        <source>The zero of {0} was older than {1} min from {2} s on.{3} A clamp drifts by 0.1 to 0.5 A in that time. {4}</source>
        <translation>Der Nullpunkt von {0} war ab {2} s älter als {1} min.{3} Eine Zange läuft in dieser Zeit um 0,1 bis 0,5 A weg. {4}</translation>
    </message>
    <message>
        <source>The zero of {0} was taken on another range than the meter is on since {1} s, where it may be another, which the uncertainties do not hold. Fix the range on the meter and take the zero there.</source>
        <translation>Der Nullpunkt von {0} wurde in einem anderen Bereich genommen, als das Messgerät seit {1} s hat; dort kann er anders sein, was die Unsicherheiten nicht enthalten. Den Bereich am Messgerät festlegen und dort nullen.</translation>
    </message>
    <message>
        <source>The {0} reads {1} V from {2} s to {3} s while {4} A flow: its probe has slipped, or sits in the wrong place. Fix the probe and measure again before trusting that voltage.</source>
        <translation>{0} zeigt {1} V von {2} s bis {3} s, während {4} A fließen: die Messspitze ist abgerutscht oder sitzt falsch. Die Spitze befestigen und neu messen, bevor man dieser Spannung traut.</translation>
    </message>
    <message>
        <source>The {0} reads {1} V from {2} s {3} instead of {4} V, but the current stayed at {5} A: its probe has moved, not the circuit. Fix the probe and measure again before trusting that voltage.</source>
        <translation>{0} zeigt {1} V ab {2} s {3} statt {4} V, aber der Strom blieb bei {5} A: die Messspitze hat sich bewegt, nicht der Kreis. Die Spitze befestigen und neu messen, bevor man dieser Spannung traut.</translation>
    </message>
    <message>
        <source>The {0} was {1} for the old and {2} for the new: {3}.</source>
        <translation>{0}: beim alten {1}, beim neuen {2}: {3}.</translation>
    </message>
    <message>
        <source>There are stretches without data: what happened then is not known.</source>
        <translation>Es gibt Abschnitte ohne Daten: was da geschah, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>There are too few good motors to say within what good ones lie.</source>
        <translation>Es sind zu wenige gute Motoren, um zu sagen, worin gute liegen.</translation>
    </message>
    <message>
        <source>There are: {0}.</source>
        <translation>Es gibt: {0}.</translation>
    </message>
    <message>
        <source>There is a finding that no single cause accounts for.</source>
        <translation>Es gibt einen Befund, den keine einzelne Ursache erklärt.</translation>
    </message>
    <message>
        <source>There is a suspicion, and no proof.</source>
        <translation>Es besteht ein Verdacht und kein Beweis.</translation>
    </message>
    <message>
        <source>These are {0} readings: they prove nothing of a vehicle.</source>
        <translation>Dies sind {0} Messwerte: sie beweisen nichts über ein Fahrzeug.</translation>
    </message>
    <message>
        <source>This finds damage and edits. It can&apos;t find somebody who seals anew: write the seal on the work order when the recording is made, and compare it.</source>
        <translation>Das findet Schäden und Änderungen. Wer neu siegelt, wird damit nicht gefunden: das Siegel beim Aufzeichnen auf den Auftrag schreiben und vergleichen.</translation>
    </message>
    <message>
        <source>This is likely</source>
        <translation>Das ist wahrscheinlich</translation>
    </message>
    <message>
        <source>This is possible, not more</source>
        <translation>Das ist möglich, mehr nicht</translation>
    </message>
    <message>
        <source>This is proven by the trace</source>
        <translation>Das ist durch die Kurve bewiesen</translation>
    </message>
    <message>
        <source>Too little current{0}: {1}, limit {2} A{3}.</source>
        <translation>Zu wenig Strom{0}: {1}, Grenzwert {2} A{3}.</translation>
    </message>
    <message>
        <source>Too much current{0}: {1}, limit {2} A{3}{4}.</source>
        <translation>Zu viel Strom{0}: {1}, Grenzwert {2} A{3}{4}.</translation>
    </message>
    <message>
        <source>Too slow for the commutator&apos;s bars: about {0} readings/s are needed.</source>
        <translation>Zu langsam für die Lamellen des Kommutators: etwa {0} Messwerte/s sind nötig.</translation>
    </message>
    <message>
        <source>Turn the wheel by hand: does it spin freely?</source>
        <translation>Das Rad von Hand drehen: dreht es frei?</translation>
    </message>
    <message>
        <source>Typed by hand: {0}. Such a reading is what somebody saw on a meter at that moment; no program has seen it.</source>
        <translation>Von Hand eingetippt: {0}. Ein solcher Wert ist, was jemand in dem Augenblick auf einem Messgerät sah; kein Programm hat ihn gesehen.</translation>
    </message>
    <message>
        <source>What was read can&apos;t open {0}, but the readings are too slow to show the start-up peak, which may reach {1} A for up to {2} s: can&apos;t tell; readings 5 ms apart or closer would settle it.</source>
        <translation>Was gelesen wurde, kann {0} nicht auslösen, aber die Messwerte sind zu langsam für die Anlaufspitze, die {1} A für bis zu {2} s erreichen kann: nicht zu sagen; Messwerte alle 5 ms oder dichter würden es klären.</translation>
    </message>
    <message>
        <source>When it stands again: feed within 0.7 V of the battery, return near 0 V, current 0 A; then, key off, turn the wheel a little by hand: if it starts now, brush or commutator is bad. Fit the new motor and record the same speeds: no dropout, current within limits, below 80 % of the fuse on high. {0} {1}</source>
        <translation>Wenn er wieder steht: Plus höchstens 0,7 V unter der Batterie, Minus nahe 0 V, Strom 0 A; dann, Zündung aus, das Rad ein wenig von Hand drehen: läuft er jetzt an, ist Bürste oder Kommutator schlecht. Den neuen Motor einbauen und dieselben Stufen aufzeichnen: kein Aussetzer, Strom in den Grenzwerten, auf der höchsten Stufe unter 80 % der Sicherung. {0} {1}</translation>
    </message>
    <message>
        <source>Whether it differs {0} can&apos;t be told.</source>
        <translation>Ob es sich {0} unterscheidet, ist nicht zu sagen.</translation>
    </message>
    <message>
        <source>Whether it is {0} can&apos;t be told</source>
        <translation>Ob es {0} ist, ist nicht zu sagen</translation>
    </message>
    <message>
        <source>With nothing wrong, key on and speed {0}</source>
        <translation>Wenn nichts defekt ist, Zündung an und Stufe {0}</translation>
    </message>
    <message>
        <source>With the clamp empty and shut, take it again.</source>
        <translation>Bei leerer, geschlossener Zange noch einmal nehmen.</translation>
    </message>
    <message>
        <source>With the fan commanded off the current reads {0} A: zero the clamp, or find what keeps the circuit on, before trusting small currents.</source>
        <translation>Bei ausgeschaltetem Gebläse zeigt der Strom {0} A: die Zange nullen oder finden, was den Kreis an hält, bevor man kleinen Strömen traut.</translation>
    </message>
    <message>
        <source>Zero of {0}: {1} {2} are subtracted from now on (scatter {3} {4}, {5} readings).</source>
        <translation>Nullpunkt ({0}): {1} {2} werden ab jetzt abgezogen (Streuung {3} {4}, {5} Messwerte).</translation>
    </message>
    <message>
        <source>a centrifugal fan draws LESS through a clogged filter (by about 12 % at 80 % of the air, 40 % at 40 %) and more without one</source>
        <translation>ein Radialgebläse zieht durch einen zugesetzten Filter WENIGER (etwa 12 % bei 80 % der Luft, 40 % bei 40 %) und ohne Filter mehr</translation>
    </message>
    <message>
        <source>a check holds {0} readings, and this has {1}.</source>
        <translation>eine Prüfung fasst {0} Messungen, diese hat {1}.</translation>
    </message>
    <message>
        <source>a current is flowing</source>
        <translation>es fließt ein Strom</translation>
    </message>
    <message>
        <source>a jumper from {0} to {1} would be a short circuit of about {2} A.</source>
        <translation>eine Brücke von {0} nach {1} wäre ein Kurzschluss mit etwa {2} A.</translation>
    </message>
    <message>
        <source>a motor that warms up draws 3 to 5 % less over 5 to 10 minutes; wait 3 minutes</source>
        <translation>ein Motor, der warm wird, zieht über 5 bis 10 Minuten 3 bis 5 % weniger; 3 Minuten warten</translation>
    </message>
    <message>
        <source>a sound {0} A {1} fuse</source>
        <translation>eine gesunde {0}-A-Sicherung {1}</translation>
    </message>
    <message>
        <source>a tap changes nothing</source>
        <translation>Klopfen ändert nichts</translation>
    </message>
    <message>
        <source>a tap starts it</source>
        <translation>Klopfen lässt es anlaufen</translation>
    </message>
    <message>
        <source>a tenth of</source>
        <translation>ein Zehntel</translation>
    </message>
    <message>
        <source>after a dropout</source>
        <translation>nach einem Aussetzer</translation>
    </message>
    <message>
        <source>air</source>
        <translation>Luftverteilung</translation>
    </message>
    <message>
        <source>allowed {0} to {1} A</source>
        <translation>erlaubt {0} bis {1} A</translation>
    </message>
    <message>
        <source>an automatic control may change speed or flaps by itself; the steps tell</source>
        <translation>eine Automatik kann Stufe oder Klappen von selbst ändern; die Stufen zeigen es</translation>
    </message>
    <message>
        <source>an automatic control may change the flaps by itself</source>
        <translation>eine Automatik kann die Klappen von selbst ändern</translation>
    </message>
    <message>
        <source>an open housing lets more air through: the current is 15 to 25 % higher</source>
        <translation>ein offenes Gehäuse lässt mehr Luft durch: der Strom ist 15 bis 25 % höher</translation>
    </message>
    <message>
        <source>and</source>
        <translation>und</translation>
    </message>
    <message>
        <source>answer to &apos;{0}&apos;</source>
        <translation>Antwort auf „{0}“</translation>
    </message>
    <message>
        <source>at speed {0}</source>
        <translation>bei Stufe {0}</translation>
    </message>
    <message>
        <source>at speed{0} {1}</source>
        <translation>bei Stufe{0} {1}</translation>
    </message>
    <message>
        <source>back-probe</source>
        <translation>von hinten messen</translation>
    </message>
    <message>
        <source>base line</source>
        <translation>Grundlinie</translation>
    </message>
    <message>
        <source>bytes come, none is understood</source>
        <translation>Bytes kommen, keines wird verstanden</translation>
    </message>
    <message>
        <source>can&apos;t tell, as {0}</source>
        <translation>nicht zu sagen, da {0}</translation>
    </message>
    <message>
        <source>can&apos;t tell: no uncertainty is known</source>
        <translation>nicht zu sagen: keine Unsicherheit bekannt</translation>
    </message>
    <message>
        <source>can&apos;t tell: {0}</source>
        <translation>nicht zu sagen: {0}</translation>
    </message>
    <message>
        <source>cii-&gt;ci</source>
        <translation>cii-&gt;ci</translation>
    </message>
    <message>
        <source>clamp zero</source>
        <translation>Zange genullt</translation>
    </message>
    <message>
        <source>click heard</source>
        <translation>Klicken zu hören</translation>
    </message>
    <message>
        <source>cold air is denser: 30 K colder makes about 10 % more current</source>
        <translation>kalte Luft ist dichter: 30 K kälter machen etwa 10 % mehr Strom aus</translation>
    </message>
    <message>
        <source>connectors moved</source>
        <translation>Stecker bewegt</translation>
    </message>
    <message>
        <source>control</source>
        <translation>Steuerung</translation>
    </message>
    <message>
        <source>controller</source>
        <translation>Regler</translation>
    </message>
    <message>
        <source>current above the limit of this speed</source>
        <translation>Strom über dem Grenzwert dieser Stufe</translation>
    </message>
    <message>
        <source>current below the limit of this speed</source>
        <translation>Strom unter dem Grenzwert dieser Stufe</translation>
    </message>
    <message>
        <source>current flows although off is commanded</source>
        <translation>Strom fließt, obwohl Aus geschaltet ist</translation>
    </message>
    <message>
        <source>current gone</source>
        <translation>Strom weg</translation>
    </message>
    <message>
        <source>current of a held rotor</source>
        <translation>Strom eines blockierten Läufers</translation>
    </message>
    <message>
        <source>current within limits, or starting up</source>
        <translation>Strom in den Grenzwerten, oder Anlauf</translation>
    </message>
    <message>
        <source>fail</source>
        <translation>nicht bestanden</translation>
    </message>
    <message>
        <source>fan off</source>
        <translation>Gebläse aus</translation>
    </message>
    <message>
        <source>fan runs as it should at this speed</source>
        <translation>das Gebläse läuft, wie es auf dieser Stufe soll</translation>
    </message>
    <message>
        <source>fan runs at full speed</source>
        <translation>das Gebläse läuft mit voller Drehzahl</translation>
    </message>
    <message>
        <source>fan runs, but too slowly</source>
        <translation>das Gebläse läuft, aber zu langsam</translation>
    </message>
    <message>
        <source>fan stands</source>
        <translation>das Gebläse steht</translation>
    </message>
    <message>
        <source>feed</source>
        <translation>Plus</translation>
    </message>
    <message>
        <source>feed gone; a decaying voltage is the coasting motor&apos;s own</source>
        <translation>Plus weg; eine abklingende Spannung ist die des auslaufenden Motors</translation>
    </message>
    <message>
        <source>feed held, return risen towards it</source>
        <translation>Plus hielt, Minus stieg darauf zu</translation>
    </message>
    <message>
        <source>frames of display segments come, not what the profile says</source>
        <translation>Anzeigesegmente kommen, aber nicht wie im Profil</translation>
    </message>
    <message>
        <source>fresh against recirculated air makes up to 10 % either way</source>
        <translation>Frischluft gegen Umluft macht bis zu 10 % aus, in beide Richtungen</translation>
    </message>
    <message>
        <source>fresh or recirculated air makes up to 10 %</source>
        <translation>Frischluft oder Umluft macht bis zu 10 % aus</translation>
    </message>
    <message>
        <source>full voltage across the motor, next to no current</source>
        <translation>volle Spannung am Motor, fast kein Strom</translation>
    </message>
    <message>
        <source>fused jumper from {0} to {1}</source>
        <translation>abgesicherte Brücke von {0} nach {1}</translation>
    </message>
    <message>
        <source>ground</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>ground side</source>
        <translation>Masseseite</translation>
    </message>
    <message>
        <source>heat in the controller at speed {0}</source>
        <translation>Wärme im Regler bei Stufe {0}</translation>
    </message>
    <message>
        <source>high-voltage</source>
        <translation>Hochvolt</translation>
    </message>
    <message>
        <source>housing</source>
        <translation>Gehäuse</translation>
    </message>
    <message>
        <source>imported</source>
        <translation>importierte</translation>
    </message>
    <message>
        <source>intake</source>
        <translation>Luftansaugung</translation>
    </message>
    <message>
        <source>it changed its measuring range ({0})</source>
        <translation>es wechselte den Messbereich ({0})</translation>
    </message>
    <message>
        <source>it never repeated more than {0} times before</source>
        <translation>vorher wiederholte es sich nie öfter als {0}-mal</translation>
    </message>
    <message>
        <source>it reported {0}</source>
        <translation>es meldete {0}</translation>
    </message>
    <message>
        <source>it seems to have changed its measuring range ({0})</source>
        <translation>es scheint den Messbereich gewechselt zu haben ({0})</translation>
    </message>
    <message>
        <source>it sent nothing</source>
        <translation>es sandte nichts</translation>
    </message>
    <message>
        <source>its command was lost (control head, its wire, or what cuts it out)</source>
        <translation>seine Ansteuerung ging verloren (Bedienteil, seine Leitung, oder was es abschaltet)</translation>
    </message>
    <message>
        <source>its port was gone (plug, cable or adapter)</source>
        <translation>sein Anschluss war weg (Stecker, Kabel oder Adapter)</translation>
    </message>
    <message>
        <source>its uncertainty is below 0, above {0} or no number.</source>
        <translation>seine Unsicherheit ist unter 0, über {0} oder keine Zahl.</translation>
    </message>
    <message>
        <source>key off</source>
        <translation>Zündung aus</translation>
    </message>
    <message>
        <source>key on</source>
        <translation>Zündung an</translation>
    </message>
    <message>
        <source>leads moved first</source>
        <translation>Leitungen vorher bewegt</translation>
    </message>
    <message>
        <source>made while the current was gone</source>
        <translation>während der Strom weg war</translation>
    </message>
    <message>
        <source>motor</source>
        <translation>Motor</translation>
    </message>
    <message>
        <source>motor or circuit</source>
        <translation>Motor oder Kreis</translation>
    </message>
    <message>
        <source>motor or ground side</source>
        <translation>Motor oder Masseseite</translation>
    </message>
    <message>
        <source>motor power</source>
        <translation>Motorleistung</translation>
    </message>
    <message>
        <source>motor power at speed {0}</source>
        <translation>Motorleistung bei Stufe {0}</translation>
    </message>
    <message>
        <source>motor-side</source>
        <translation>motorseitig</translation>
    </message>
    <message>
        <source>moving-fan</source>
        <translation>laufendes Gebläse</translation>
    </message>
    <message>
        <source>no answer within {0} s</source>
        <translation>keine Antwort innerhalb von {0} s</translation>
    </message>
    <message>
        <source>no click</source>
        <translation>kein Klicken</translation>
    </message>
    <message>
        <source>no current was read</source>
        <translation>es wurde kein Strom gelesen</translation>
    </message>
    <message>
        <source>no difference beyond the uncertainty</source>
        <translation>kein Unterschied über die Unsicherheit hinaus</translation>
    </message>
    <message>
        <source>no speed was run at which it holds back a real part of the voltage</source>
        <translation>keine Stufe wurde gefahren, auf der er einen merklichen Teil der Spannung zurückhält</translation>
    </message>
    <message>
        <source>no steady current at the speed of a tap to compare with: run longer at each speed.</source>
        <translation>kein ruhiger Strom bei der Stufe eines Klopfens zum Vergleich: auf jeder Stufe länger laufen lassen.</translation>
    </message>
    <message>
        <source>no steady running with current and voltage read</source>
        <translation>kein ruhiger Lauf mit gelesenem Strom und gelesener Spannung</translation>
    </message>
    <message>
        <source>no tap brought the current back.</source>
        <translation>kein Klopfen brachte den Strom zurück.</translation>
    </message>
    <message>
        <source>no tap was made while it was gone.</source>
        <translation>solange er weg war, wurde nicht geklopft.</translation>
    </message>
    <message>
        <source>no tap was made while the current was gone.</source>
        <translation>solange der Strom weg war, wurde nicht geklopft.</translation>
    </message>
    <message>
        <source>no tap was made while the current was gone: tap when the fan stands.</source>
        <translation>solange der Strom weg war, wurde nicht geklopft: klopfen, wenn das Gebläse steht.</translation>
    </message>
    <message>
        <source>no-current</source>
        <translation>kein Strom</translation>
    </message>
    <message>
        <source>nobody recorded whether this was the highest speed</source>
        <translation>niemand hat aufgezeichnet, ob dies die höchste Stufe war</translation>
    </message>
    <message>
        <source>not asked to run</source>
        <translation>soll nicht laufen</translation>
    </message>
    <message>
        <source>not read; record the motor&apos;s feed and its return, so that a plug shaken by the tap</source>
        <translation>nicht gelesen; Plus und Minus des Motors aufzeichnen, damit ein vom Klopfen erschütterter Stecker</translation>
    </message>
    <message>
        <source>nothing electrical</source>
        <translation>nichts Elektrisches</translation>
    </message>
    <message>
        <source>nothing shows that the fan was asked to run</source>
        <translation>nichts zeigt, dass das Gebläse laufen sollte</translation>
    </message>
    <message>
        <source>nothing was there to return.</source>
        <translation>nichts war da, was zurückkehren konnte.</translation>
    </message>
    <message>
        <source>old {0}, new {1} ({2}): the new one draws {3} ({4}) {5}; {6}</source>
        <translation>alt {0}, neu {1} ({2}): das neue zieht {3} ({4}) {5}; {6}</translation>
    </message>
    <message>
        <source>on the bench a fan with its wheel draws 15 to 25 % more than in the vehicle, a motor without its wheel 2 to 4 A</source>
        <translation>auf der Werkbank zieht ein Gebläse mit Rad 15 bis 25 % mehr als im Fahrzeug, ein Motor ohne Rad 2 bis 4 A</translation>
    </message>
    <message>
        <source>on the bench the current is another</source>
        <translation>auf der Werkbank ist der Strom ein anderer</translation>
    </message>
    <message>
        <source>one had not warmed up: 3 to 5 % over 5 to 10 minutes</source>
        <translation>einer war noch nicht warm: 3 bis 5 % über 5 bis 10 Minuten</translation>
    </message>
    <message>
        <source>open again</source>
        <translation>wieder offen</translation>
    </message>
    <message>
        <source>overload: the current was beyond its range</source>
        <translation>Überlauf: der Strom lag außerhalb seines Bereichs</translation>
    </message>
    <message>
        <source>pass</source>
        <translation>bestanden</translation>
    </message>
    <message>
        <source>place</source>
        <translation>Einbauort</translation>
    </message>
    <message>
        <source>place or test point</source>
        <translation>Stelle oder Messpunkt</translation>
    </message>
    <message>
        <source>plug {0} off</source>
        <translation>Stecker {0} ab</translation>
    </message>
    <message>
        <source>points to {0}</source>
        <translation>deutet auf {0}</translation>
    </message>
    <message>
        <source>position of the key</source>
        <translation>Stellung der Zündung</translation>
    </message>
    <message>
        <source>probability by chance {0}</source>
        <translation>Wahrscheinlichkeit durch Zufall {0}</translation>
    </message>
    <message>
        <source>readings are missing before and after, and what lasts less than {0} s is no condition of its own</source>
        <translation>davor und danach fehlen Messwerte, und was kürzer als {0} s dauert, ist kein eigener Zustand</translation>
    </message>
    <message>
        <source>relay</source>
        <translation>Relais</translation>
    </message>
    <message>
        <source>relay output or battery</source>
        <translation>Relaisausgang oder Batterie</translation>
    </message>
    <message>
        <source>repeats</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>return</source>
        <translation>Rückkehr</translation>
    </message>
    <message>
        <source>silence, overload or a lost instrument</source>
        <translation>Stille, Überlauf oder ein verlorenes Gerät</translation>
    </message>
    <message>
        <source>simulated</source>
        <translation>simulierte</translation>
    </message>
    <message>
        <source>sleep is blocked while recording</source>
        <translation>Ruhezustand gesperrt, solange aufgezeichnet wird</translation>
    </message>
    <message>
        <source>sleep is not blocked</source>
        <translation>Ruhezustand nicht gesperrt</translation>
    </message>
    <message>
        <source>speed {0} is commanded, so that the fan may be running</source>
        <translation>Stufe {0} ist befohlen, das Gebläse kann also laufen</translation>
    </message>
    <message>
        <source>speed {0} was commanded at {1} s</source>
        <translation>Stufe {0} bei {1} s geschaltet wurde</translation>
    </message>
    <message>
        <source>speed {0} was not run long enough to be steady</source>
        <translation>Stufe {0} nicht lange genug lief, um ruhig zu sein</translation>
    </message>
    <message>
        <source>steady load of the fuse</source>
        <translation>Dauerlast der Sicherung</translation>
    </message>
    <message>
        <source>taps</source>
        <translation>Klopfen</translation>
    </message>
    <message>
        <source>ten times</source>
        <translation>das Zehnfache</translation>
    </message>
    <message>
        <source>text comes, but not as the profile says</source>
        <translation>Text kommt, aber nicht wie im Profil</translation>
    </message>
    <message>
        <source>the air&apos;s density alone makes {0} % of current at the new one</source>
        <translation>allein die Dichte der Luft macht beim neuen {0} % Strom aus</translation>
    </message>
    <message>
        <source>the command was gone</source>
        <translation>die Ansteuerung weg war</translation>
    </message>
    <message>
        <source>the command went first, or at the same instant</source>
        <translation>die Ansteuerung ging zuerst, oder im selben Augenblick</translation>
    </message>
    <message>
        <source>the controller is a resistor pack: its heat sits in the air stream and is bounded by its thermal limiter, not by a figure for a linear controller</source>
        <translation>der Regler ist ein Widerstandspaket: seine Wärme liegt im Luftstrom und ist durch seine Thermosicherung begrenzt, nicht durch einen Wert für einen linearen Regler</translation>
    </message>
    <message>
        <source>the controller is pulsed: means of voltage and current do not give its heat; what it loses is in its switching</source>
        <translation>der Regler taktet: Mittelwerte von Spannung und Strom geben seine Wärme nicht; was er verliert, liegt im Schalten</translation>
    </message>
    <message>
        <source>the current channel is to be doubted: {0}</source>
        <translation>der Stromkanal ist zu bezweifeln: {0}</translation>
    </message>
    <message>
        <source>the current goes with the voltage</source>
        <translation>der Strom geht mit der Spannung</translation>
    </message>
    <message>
        <source>the current moved by {0} A</source>
        <translation>der Strom sich um {0} A bewegte</translation>
    </message>
    <message>
        <source>the feed read nothing at once, without the voltage of the motor that still turned{0}: a feed probe that slipped looks the same</source>
        <translation>Plus zeigte sofort nichts, ohne die Spannung des noch drehenden Motors{0}: eine abgerutschte Messspitze sähe gleich aus</translation>
    </message>
    <message>
        <source>the feed was gone</source>
        <translation>Plus weg war</translation>
    </message>
    <message>
        <source>the feed went away (fuse, relay, connector or wire ahead of the motor)</source>
        <translation>Plus ging weg (Sicherung, Relais, Stecker oder Leitung vor dem Motor)</translation>
    </message>
    <message>
        <source>the flaps make 3 to 10 %</source>
        <translation>die Klappen machen 3 bis 10 % aus</translation>
    </message>
    <message>
        <source>the ground side opened (controller, its command, ground or connector)</source>
        <translation>die Masseseite öffnete (Regler, seine Ansteuerung, Masse oder Stecker)</translation>
    </message>
    <message>
        <source>the ground side was open</source>
        <translation>die Masseseite offen war</translation>
    </message>
    <message>
        <source>the leads are on something</source>
        <translation>die Leitungen liegen an etwas an</translation>
    </message>
    <message>
        <source>the meter shows</source>
        <translation>das Messgerät zeigt</translation>
    </message>
    <message>
        <source>the meter shows an overload. Choose a wider range and take it again.</source>
        <translation>das Messgerät zeigt Überlauf. Einen größeren Bereich wählen und ihn neu nehmen.</translation>
    </message>
    <message>
        <source>the meter&apos;s input resistance must be above 0 Ω.</source>
        <translation>der Eingangswiderstand des Messgeräts muss über 0 Ω sein.</translation>
    </message>
    <message>
        <source>the number {0} stands for two entries.</source>
        <translation>die Nummer {0} steht für zwei Einträge.</translation>
    </message>
    <message>
        <source>the other readings</source>
        <translation>den anderen Messungen</translation>
    </message>
    <message>
        <source>the readings move too much (scatter {0} {1}, at most {2} {3}): is the fan running, or the clamp being moved? Leave it empty, shut and still.</source>
        <translation>die Messwerte bewegen sich zu sehr (Streuung {0} {1}, höchstens {2} {3}): läuft das Gebläse, oder wird die Zange bewegt? Sie leer, geschlossen und ruhig lassen.</translation>
    </message>
    <message>
        <source>the recording ended first.</source>
        <translation>die Aufzeichnung endete vorher.</translation>
    </message>
    <message>
        <source>the rest</source>
        <translation>der Rest</translation>
    </message>
    <message>
        <source>the return rose to {0} V only and stayed there, which no open ground side does once the motor stands: a return probe that slipped and floats looks the same</source>
        <translation>Minus stieg nur auf {0} V und blieb dort, was keine offene Masseseite tut, wenn der Motor steht: eine abgerutschte, offene Messspitze sähe gleich aus</translation>
    </message>
    <message>
        <source>the strongest speed seen</source>
        <translation>die stärkste gesehene Stufe</translation>
    </message>
    <message>
        <source>the value is no number.</source>
        <translation>der Wert ist keine Zahl.</translation>
    </message>
    <message>
        <source>the voltage across the motor moved by {0} V</source>
        <translation>die Spannung am Motor sich um {0} V bewegte</translation>
    </message>
    <message>
        <source>the {0}&apos;s probe is known to have slipped about then, so that its voltage tells no side</source>
        <translation>die Messspitze an {0} ist um diese Zeit nachweislich abgerutscht, sodass ihre Spannung keine Seite nennt</translation>
    </message>
    <message>
        <source>there is no {0} &apos;{1}&apos;.</source>
        <translation>es gibt nicht: {0} „{1}“.</translation>
    </message>
    <message>
        <source>these channels can&apos;t say which side</source>
        <translation>diese Kanäle können nicht sagen, welche Seite</translation>
    </message>
    <message>
        <source>these channels can&apos;t say which side{0}</source>
        <translation>diese Kanäle können nicht sagen, welche Seite{0}</translation>
    </message>
    <message>
        <source>they differ beyond the uncertainty</source>
        <translation>sie unterscheiden sich über die Unsicherheit hinaus</translation>
    </message>
    <message>
        <source>towards the face most air flows; floor and defrost take 3 to 10 % less</source>
        <translation>zum Gesicht strömt die meiste Luft; Fußraum und Scheibe nehmen 3 bis 10 % weniger</translation>
    </message>
    <message>
        <source>typed</source>
        <translation>eingetippte</translation>
    </message>
    <message>
        <source>voltage across the motor</source>
        <translation>Spannung am Motor</translation>
    </message>
    <message>
        <source>what any known fault would give</source>
        <translation>was irgendein bekannter Fehler ergäbe</translation>
    </message>
    <message>
        <source>what is not stated of the meters (usually up to {0} {1}) could make the difference</source>
        <translation>was zu den Messgeräten nicht angegeben ist (üblich bis {0} {1}), könnte den Unterschied machen</translation>
    </message>
    <message>
        <source>what it sent was not understood ({0})</source>
        <translation>was es sandte, wurde nicht verstanden ({0})</translation>
    </message>
    <message>
        <source>what was seen</source>
        <translation>was zu sehen war</translation>
    </message>
    <message>
        <source>what was seen ({0}: {1})</source>
        <translation>was zu sehen war ({0}: {1})</translation>
    </message>
    <message>
        <source>wheel does not spin freely</source>
        <translation>das Rad dreht nicht frei</translation>
    </message>
    <message>
        <source>wheel spins freely</source>
        <translation>das Rad dreht frei</translation>
    </message>
    <message>
        <source>whether in the motor, its feed or its ground side can&apos;t be told</source>
        <translation>ob im Motor, in seinem Plus oder auf seiner Masseseite, ist nicht zu sagen</translation>
    </message>
    <message>
        <source>whether inside the motor or on its ground side can&apos;t be told without its return</source>
        <translation>ob innen im Motor oder auf seiner Masseseite, ist ohne sein Minus nicht zu sagen</translation>
    </message>
    <message>
        <source>which side of the motor it sits on was not seen; run it at its lowest speed and read {0} as well</source>
        <translation>auf welcher Seite des Motors er sitzt, war nicht zu sehen; auf kleinster Stufe laufen lassen und auch {0} lesen</translation>
    </message>
    <message>
        <source>whichever entry is left out</source>
        <translation>welcher Eintrag auch weggelassen wird</translation>
    </message>
    <message>
        <source>windows make up to 5 %</source>
        <translation>Fenster machen bis zu 5 % aus</translation>
    </message>
    <message>
        <source>with any one entry left out still {0}, or more</source>
        <translation>ohne irgendeinen einzelnen Eintrag noch {0} oder mehr</translation>
    </message>
    <message>
        <source>with the housing open the current is 15 to 25 % higher</source>
        <translation>mit offenem Gehäuse ist der Strom 15 bis 25 % höher</translation>
    </message>
    <message>
        <source>with windows shut the current is up to 5 % lower</source>
        <translation>mit geschlossenen Fenstern ist der Strom bis zu 5 % niedriger</translation>
    </message>
    <message>
        <source>within what good ones draw</source>
        <translation>im Bereich der guten</translation>
    </message>
    <message>
        <source>within {0} % of the old one</source>
        <translation>innerhalb {0} % des alten</translation>
    </message>
    <message>
        <source>{0} % of the {1} or more; {2} % is asked for.</source>
        <translation>{0} % von {1} oder mehr; verlangt sind {2} %.</translation>
    </message>
    <message>
        <source>{0} (typed by hand: {1}).</source>
        <translation>{0} (von Hand eingetippt: {1}).</translation>
    </message>
    <message>
        <source>{0} ({1}) read exactly {2} {3} from {4} s to {5} s, {6} times, while {7}: is the meter on hold, smoothing, or repeating its last reading? Don&apos;t rely on it there; take the hold off and measure again.</source>
        <translation>{0} ({1}) zeigte genau {2} {3} von {4} s bis {5} s, {6}-mal, während {7}: steht das Messgerät auf Hold, glättet es, oder wiederholt es den letzten Wert? Dort nicht darauf verlassen; Hold ausschalten und neu messen.</translation>
    </message>
    <message>
        <source>{0} A at most, over {1} readings or more; asked for: less than {2} % of the base line and {3} A, over {4} readings or more{5}.</source>
        <translation>höchstens {0} A über {1} oder mehr Messwerte; verlangt: unter {2} % der Grundlinie und {3} A, über {4} oder mehr Messwerte{5}.</translation>
    </message>
    <message>
        <source>{0} A or {1} A? The running current{2} is about {3} what such a fan draws ({4} s to {5} s): check the clamp&apos;s switch (1, 10 or 100 mV/A), the turns through it and what was entered. Until then the limits say nothing about the motor.</source>
        <translation>{0} A oder {1} A? Der Laufstrom{2} ist etwa {3} des bei solchem Gebläse Üblichen ({4} s bis {5} s): Schalter der Zange (1, 10 oder 100 mV/A), Windungen durch sie und Eingabe prüfen. Bis dahin sagen die Grenzwerte nichts über den Motor.</translation>
    </message>
    <message>
        <source>{0} Confirm it with the next test.</source>
        <translation>{0} Mit der nächsten Messung bestätigen.</translation>
    </message>
    <message>
        <source>{0} Nothing within reach confirms it; repeat it or open another place.</source>
        <translation>{0} Nichts Zugängliches bestätigt es; wiederholen oder eine andere Stelle öffnen.</translation>
    </message>
    <message>
        <source>{0} Opening times: {1} by ISO 8820-3{2}.</source>
        <translation>{0} Auslösezeiten: {1} nach ISO 8820-3{2}.</translation>
    </message>
    <message>
        <source>{0} against {1} taken as good.{2}</source>
        <translation>{0} gegen {1} als gut genommene.{2}</translation>
    </message>
    <message>
        <source>{0} and {1} do not hold the same number of steady running speeds: their order by current does not tell which belongs to which. Record the same speeds in both.</source>
        <translation>{0} und {1} haben nicht gleich viele Stufen mit ruhigem Lauf: ihre Reihenfolge nach Strom sagt nicht, welche zu welcher gehört. In beiden dieselben Stufen aufzeichnen.</translation>
    </message>
    <message>
        <source>{0} and {1} have no commanded speed with steady, undoubted current in common. Record the same speeds in both, each for at least some seconds.</source>
        <translation>{0} und {1} haben keine befohlene Stufe mit ruhigem, unbezweifeltem Strom gemeinsam. In beiden dieselben Stufen aufzeichnen, jede einige Sekunden lang.</translation>
    </message>
    <message>
        <source>{0} at speed {1}</source>
        <translation>{0} bei Stufe {1}</translation>
    </message>
    <message>
        <source>{0} at {1} V across the motor</source>
        <translation>{0} bei {1} V am Motor</translation>
    </message>
    <message>
        <source>{0} attempts</source>
        <translation>{0} Versuchen</translation>
    </message>
    <message>
        <source>{0} before and {1} after the taps left alone</source>
        <translation>{0} vor und {1} nach dem Klopfen in Ruhe</translation>
    </message>
    <message>
        <source>{0} can be told from the motor.</source>
        <translation>{0} lässt sich vom Motor unterscheiden.</translation>
    </message>
    <message>
        <source>{0} does not go with {1}: without it {2} would be expected there.</source>
        <translation>{0} passt nicht zu {1}: ohne es wäre dort {2} zu erwarten.</translation>
    </message>
    <message>
        <source>{0} dropout(s) of the current shorter than {1} s (min_dwell_s), {2} s together, are not spans of their own: lower min_dwell_s to see them.</source>
        <translation>{0} Aussetzer des Stroms, kürzer als {1} s (min_dwell_s), zusammen {2} s, sind keine eigenen Abschnitte: min_dwell_s senken, um sie zu sehen.</translation>
    </message>
    <message>
        <source>{0} for {1} s together ({2}): what the motor did then is not known.</source>
        <translation>{0} zusammen {1} s lang ({2}): was der Motor da tat, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>{0} from {1} to {2} ({3})</source>
        <translation>{0} von {1} bis {2} ({3})</translation>
    </message>
    <message>
        <source>{0} gaps, the longest {1} s</source>
        <translation>{0} Lücken, die längste {1} s</translation>
    </message>
    <message>
        <source>{0} holds no commanded speeds, so that nothing tells which steps belong together.</source>
        <translation>{0} enthält keine befohlenen Stufen, so dass nichts sagt, welche zusammengehören.</translation>
    </message>
    <message>
        <source>{0} holds no commanded speeds, so that nothing tells which steps belong together. Compare with --speed-by-current to pair them by order of current.</source>
        <translation>{0} enthält keine befohlenen Stufen, so dass nichts sagt, welche zusammengehören. Mit --speed-by-current vergleichen, um sie nach Strom zu paaren.</translation>
    </message>
    <message>
        <source>{0} holds no readings; there is nothing to compare.</source>
        <translation>{0} enthält keine Messwerte; es gibt nichts zu vergleichen.</translation>
    </message>
    <message>
        <source>{0} is likely ({1})</source>
        <translation>{0} ist wahrscheinlich ({1})</translation>
    </message>
    <message>
        <source>{0} is likely ({1}), but entry {2} alone carries that: without it {3}.</source>
        <translation>{0} ist wahrscheinlich ({1}), aber Eintrag {2} allein trägt das: ohne ihn {3}.</translation>
    </message>
    <message>
        <source>{0} is likely ({1}), but nothing was </source>
        <translation>{0} ist wahrscheinlich ({1}), aber nichts wurde </translation>
    </message>
    <message>
        <source>{0} is simulated and {1} is {2}: a simulated fan says nothing of a real one. Compare two of one kind.</source>
        <translation>{0} ist simuliert und {1} ist {2}: ein simuliertes Gebläse sagt nichts über ein wirkliches. Zwei der gleichen Art vergleichen.</translation>
    </message>
    <message>
        <source>{0} loss(es) of current beside an off or on command, shorter than {1} s (command_lag_s), are taken for the command.</source>
        <translation>{0} Stromausfälle neben einer Schaltung auf Aus oder An, kürzer als {1} s (command_lag_s), gelten als die Schaltung.</translation>
    </message>
    <message>
        <source>{0} made while the current was gone changed nothing: the current did not come back within 2 s of any.</source>
        <translation>{0}, während der Strom weg war, änderte nichts: binnen 2 s kam der Strom nie zurück.</translation>
    </message>
    <message>
        <source>{0} made while {1}{2}: that says nothing of the motor.</source>
        <translation>{0}, während {1}{2}: das sagt nichts über den Motor.</translation>
    </message>
    <message>
        <source>{0} may be a ghost voltage: the point probably floats, and a 10 MΩ meter still shows volts there. Put a test lamp across while measuring (never on the pins of a module): a ghost falls to nothing.</source>
        <translation>{0} kann eine Geisterspannung sein: der Punkt hängt wohl in der Luft, und ein Messgerät mit 10 MΩ zeigt dort trotzdem Volt. Beim Messen eine Prüflampe parallel halten (nie an Stiften eines Steuergeräts): eine Geisterspannung fällt auf nichts.</translation>
    </message>
    <message>
        <source>{0} more like these</source>
        <translation>{0} weitere dieser Art</translation>
    </message>
    <message>
        <source>{0} more short dropouts are inferred{1}; the first: {2}</source>
        <translation>Auf {0} weitere kurze Aussetzer wird geschlossen{1}; der erste: {2}</translation>
    </message>
    <message>
        <source>{0} of {1} attempts brought the current back</source>
        <translation>{0} von {1} Versuchen brachten den Strom zurück</translation>
    </message>
    <message>
        <source>{0} of {1} came back to {2} % of the base line within {3} s of the tap; all are asked for.</source>
        <translation>{0} von {1} kamen binnen {3} s nach dem Klopfen auf {2} % der Grundlinie zurück; verlangt sind alle.</translation>
    </message>
    <message>
        <source>{0} of {1} readings go with no fault that this circuit can have: nothing is told. Check that it is this circuit, that key, speed, plugs and fuses were as entered, and where the meter&apos;s other lead was; then begin a new check.</source>
        <translation>{0} von {1} Messungen passen zu keinem Fehler, den dieser Kreis haben kann: nichts ist gesagt. Prüfen, ob es dieser Stromlauf ist, ob Zündung, Stufe, Stecker und Sicherungen waren wie eingegeben, und wo die andere Leitung saß; dann eine neue Prüfung beginnen.</translation>
    </message>
    <message>
        <source>{0} readings in {1} s, {2} are needed. Is the meter on, and sending?</source>
        <translation>{0} Messwerte in {1} s, {2} sind nötig. Ist das Messgerät an, und sendet es?</translation>
    </message>
    <message>
        <source>{0} s at {1} % or above{2}</source>
        <translation>{0} s bei {1} % oder darüber{2}</translation>
    </message>
    <message>
        <source>{0} short stretch(es) were the pulses of a pulsed feed and are not taken for dropouts.</source>
        <translation>{0} kurze Abschnitte waren die Pulse einer getakteten Zuleitung und gelten nicht als Aussetzer.</translation>
    </message>
    <message>
        <source>{0} short zero(s) of the current came with a change of the measuring range and are not taken for dropouts.</source>
        <translation>{0} kurze Nullen des Stroms kamen mit einem Wechsel des Messbereichs und gelten nicht als Aussetzer.</translation>
    </message>
    <message>
        <source>{0} tap</source>
        <translation>{0} Klopfen</translation>
    </message>
    <message>
        <source>{0} tap(s) made it go, as a loose connector does when shaken</source>
        <translation>{0}-mal Klopfen ließ ihn ausfallen, wie ein loser Stecker, der erschüttert wird</translation>
    </message>
    <message>
        <source>{0} tap(s) were made while it was gone</source>
        <translation>{0}-mal wurde geklopft, während er weg war</translation>
    </message>
    <message>
        <source>{0} taps</source>
        <translation>{0} Klopfen</translation>
    </message>
    <message>
        <source>{0} tap{1} changed nothing: the current stayed as it was.</source>
        <translation>{0}-mal Klopfen änderte nichts: der Strom blieb, wie er war.</translation>
    </message>
    <message>
        <source>{0} times {1} between {2} s and {3} s, {4} s together{5}</source>
        <translation>{0}-mal {1} zwischen {2} s und {3} s, zusammen {4} s{5}</translation>
    </message>
    <message>
        <source>{0} times {1} between {2} s and {3} s, {4} s together{5}; the longest: {6}</source>
        <translation>{0}-mal {1} zwischen {2} s und {3} s, zusammen {4} s{5}; der längste: {6}</translation>
    </message>
    <message>
        <source>{0} was recorded for {1} V and {2} for {3} V nominal: these are different motors. Record both with limits of the same nominal voltage.</source>
        <translation>{0} wurde für {1} V aufgezeichnet und {2} für {3} V Nennspannung: das sind verschiedene Motoren. Beide mit Grenzen derselben Nennspannung aufzeichnen.</translation>
    </message>
    <message>
        <source>{0} was {1} ms later than {2}, which is subtracted</source>
        <translation>{0} war {1} ms später als {2}, was abgezogen ist</translation>
    </message>
    <message>
        <source>{0} was {1}, now {2}</source>
        <translation>{0} war {1}, jetzt {2}</translation>
    </message>
    <message>
        <source>{0} {1} can&apos;t be on a {2} V circuit (at most {3} {4}).</source>
        <translation>{0} {1} kann es in einem Kreis mit {2} V nicht geben (höchstens {3} {4}).</translation>
    </message>
    <message>
        <source>{0} {1} is no zero (at most {2} {3}): {4}. Take the clamp off the wire and shut it, then take the zero again.</source>
        <translation>{0} {1} sind kein Nullpunkt (höchstens {2} {3}): {4}. Die Zange von der Leitung nehmen und schließen, dann den Nullpunkt neu nehmen.</translation>
    </message>
    <message>
        <source>{0}, and the motor voltage was not read; measure both with the engine the same</source>
        <translation>{0}, und die Motorspannung wurde nicht gelesen; beide mit gleichem Zustand des Fahrzeugmotors messen</translation>
    </message>
    <message>
        <source>{0}, battery &apos;{1}&apos; would give {2} A: a short circuit.</source>
        <translation>{0}, gäbe die Batterie „{1}“ {2} A: ein Kurzschluss.</translation>
    </message>
    <message>
        <source>{0}, it has no solution.</source>
        <translation>{0}, hat er keine Lösung.</translation>
    </message>
    <message>
        <source>{0}, its fan would stand or crawl: the motor generates {1} V of {2} V.</source>
        <translation>{0}, stünde oder kröche sein Gebläse: der Motor erzeugt {1} V von {2} V.</translation>
    </message>
    <message>
        <source>{0}, out of reach</source>
        <translation>{0}, unzugänglich</translation>
    </message>
    <message>
        <source>{0}. The controller pulses, so that the fuse carries less than the motor: can&apos;t tell; the current through the fuse itself would settle it.</source>
        <translation>{0}. Der Regler taktet, sodass die Sicherung weniger führt als der Motor: nicht zu sagen; der Strom durch die Sicherung selbst würde es klären.</translation>
    </message>
    <message>
        <source>{0}: NOT as it was packed.</source>
        <translation>{0}: NICHT wie gepackt.</translation>
    </message>
    <message>
        <source>{0}: NOT as sealed.</source>
        <translation>{0}: NICHT wie gesiegelt.</translation>
    </message>
    <message>
        <source>{0}: a voltage drop tells about a connection only while current flows; the fan was not running.</source>
        <translation>{0}: ein Spannungsfall sagt nur bei fließendem Strom etwas über eine Verbindung; das Gebläse lief nicht.</translation>
    </message>
    <message>
        <source>{0}: can&apos;t tell, as {1}.</source>
        <translation>{0}: nicht zu sagen, da {1}.</translation>
    </message>
    <message>
        <source>{0}: consistent with a circuit breaker that closes again</source>
        <translation>{0}: passend zu einem Schutzschalter, der wieder schließt</translation>
    </message>
    <message>
        <source>{0}: fail, outside for {1} s</source>
        <translation>{0}: nicht bestanden, außerhalb für {1} s</translation>
    </message>
    <message>
        <source>{0}: fail. As it did not open, the fuse is not of that rating or kind, or the clamp reads too high, or the current goes another way: look at the fuse first.</source>
        <translation>{0}: nicht bestanden. Da sie nicht auslöste, hat sie nicht diesen Nennwert oder diese Art, oder die Zange zeigt zu viel, oder der Strom geht anders: zuerst die Sicherung ansehen.</translation>
    </message>
    <message>
        <source>{0}: intact. Every file agrees with the seal.</source>
        <translation>{0}: unverändert. Jede Datei stimmt mit dem Siegel überein.</translation>
    </message>
    <message>
        <source>{0}: intact. {1} files agree with the lists of the pack.</source>
        <translation>{0}: unverändert. {1} Dateien stimmen mit den Listen des Pakets überein.</translation>
    </message>
    <message>
        <source>{0}: no channel read the motor current; there is nothing to compare.</source>
        <translation>{0}: kein Kanal las den Motorstrom; es gibt nichts zu vergleichen.</translation>
    </message>
    <message>
        <source>{0}: no reading was typed for this time</source>
        <translation>{0}: für diese Zeit wurde kein Messwert eingetippt</translation>
    </message>
    <message>
        <source>{0}: the controller turns {1}{2} into heat ({3} V over it, {4}); allowed up to {5} W: {6}{7}.</source>
        <translation>{0}: der Regler setzt {1}{2} in Wärme um ({3} V an ihm, {4}); erlaubt bis {5} W: {6}{7}.</translation>
    </message>
    <message>
        <source>{0}: the current may be off by a factor of ten. {1} Put that right and measure again.</source>
        <translation>{0}: der Strom kann um den Faktor zehn falsch sein. {1} Das in Ordnung bringen und neu messen.</translation>
    </message>
    <message>
        <source>{0}: with a plug off nothing flows, so a good voltage there tells nothing about resistance. Measure plugged in, with the fan on high.</source>
        <translation>{0}: mit abgezogenem Stecker fließt nichts, eine gute Spannung sagt dort also nichts über den Widerstand. Gesteckt messen, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>{0}; a command seems {1} s late</source>
        <translation>{0}; eine Schaltung scheint {1} s zu spät</translation>
    </message>
    <message>
        <source>{0}; all of them are asked for.</source>
        <translation>{0}; verlangt sind alle.</translation>
    </message>
    <message>
        <source>{0}; measure both in the same state</source>
        <translation>{0}; beide im gleichen Zustand messen</translation>
    </message>
    <message>
        <source>{0}; new against used counts as up to 10 %</source>
        <translation>{0}; neu gegen gebraucht zählt als bis zu 10 %</translation>
    </message>
    <message>
        <source>{0}; no command recorded</source>
        <translation>{0}; keine Schaltung aufgezeichnet</translation>
    </message>
    <message>
        <source>{0}; one more test before parts are ordered tells it from {1}.</source>
        <translation>{0}; eine weitere Messung vor der Bestellung unterscheidet es von {1}.</translation>
    </message>
    <message>
        <source>{0}; say in what state it was</source>
        <translation>{0}; angeben, in welchem Zustand er war</translation>
    </message>
    <message>
        <source>{0}; {1} or more are asked for.</source>
        <translation>{0}; {1} oder mehr sind verlangt.</translation>
    </message>
    <message>
        <source>{0}; {1} s are asked for.</source>
        <translation>{0}; {1} s sind verlangt.</translation>
    </message>
    <message>
        <source>{0}measured yet. Confirm it with the next test.</source>
        <translation>{0}noch nichts gemessen. Mit der nächsten Messung bestätigen.</translation>
    </message>
    <message>
        <source>{0}measured, and nothing within reach confirms it: open another place.</source>
        <translation>{0}gemessen, und nichts Zugängliches bestätigt es: eine andere Stelle öffnen.</translation>
    </message>
</context>
<context>
    <name>window</name>
    <message>
        <source>  at {at}</source>
        <translation>  bei {at}</translation>
    </message>
    <message>
        <source> (found)</source>
        <translation> (gefunden)</translation>
    </message>
    <message>
        <source> (should be {expected_words})</source>
        <translation> (soll: {expected_words})</translation>
    </message>
    <message>
        <source> (voltage: {labels})</source>
        <translation> (Spannung: {labels})</translation>
    </message>
    <message>
        <source> ({side} part of its job)</source>
        <translation> (Teil: {side})</translation>
    </message>
    <message>
        <source> 0 (off)</source>
        <translation> 0 (aus)</translation>
    </message>
    <message>
        <source> It did: {before}.</source>
        <translation> Bisher: {before}.</translation>
    </message>
    <message>
        <source> There it goes before: {usual}.</source>
        <translation> Dort geht sie vor: {usual}.</translation>
    </message>
    <message>
        <source> to </source>
        <translation> bis </translation>
    </message>
    <message>
        <source>&apos;{name}&apos; can&apos;t be bound.</source>
        <translation>„{name}“ kann nicht belegt werden.</translation>
    </message>
    <message>
        <source>&apos;{name}&apos; is no key.</source>
        <translation>„{name}“ ist keine Taste.</translation>
    </message>
    <message>
        <source>&apos;{text}&apos; is no percentage: enter a number above 0, such as 10, or leave it empty.</source>
        <translation>„{text}“ ist kein Prozentwert: eine Zahl über 0 eingeben, etwa 10, oder leer lassen.</translation>
    </message>
    <message>
        <source>, calibration due {calibration_due}</source>
        <translation>, Kalibrierung gültig bis {calibration_due}</translation>
    </message>
    <message>
        <source>, serial number {serial}</source>
        <translation>, Seriennummer {serial}</translation>
    </message>
    <message>
        <source>, typed by hand</source>
        <translation>, von Hand eingetippt</translation>
    </message>
    <message>
        <source>, {lost_rows} rows lost</source>
        <translation>, {lost_rows} Zeilen verloren</translation>
    </message>
    <message>
        <source>, {refused} refused</source>
        <translation>, {refused} abgewiesen</translation>
    </message>
    <message>
        <source>1 A shown = {factor} A</source>
        <translation>1 A angezeigt = {factor} A</translation>
    </message>
    <message>
        <source>1 V shown = {factor} V</source>
        <translation>1 V angezeigt = {factor} V</translation>
    </message>
    <message>
        <source>1 mV = {factor} A</source>
        <translation>1 mV = {factor} A</translation>
    </message>
    <message>
        <source>17 characters</source>
        <translation>17 Zeichen</translation>
    </message>
    <message>
        <source>; U without: {lacking}</source>
        <translation>; U ohne: {lacking}</translation>
    </message>
    <message>
        <source>; recording goes on</source>
        <translation>; die Aufzeichnung läuft weiter</translation>
    </message>
    <message>
        <source>= NO DIFFERENCE SEEN</source>
        <translation>= KEIN UNTERSCHIED ZU SEHEN</translation>
    </message>
    <message>
        <source>= none</source>
        <translation>= keiner</translation>
    </message>
    <message>
        <source>? CAN&apos;T TELL</source>
        <translation>? NICHT ZU SAGEN</translation>
    </message>
    <message>
        <source>? NOTHING TO TELL: too few good ones</source>
        <translation>? NICHTS ZU SAGEN: zu wenige gute</translation>
    </message>
    <message>
        <source>? can&apos;t tell</source>
        <translation>? offen</translation>
    </message>
    <message>
        <source>A new check. What was entered before, for {title}, stays in {folder}.</source>
        <translation>Eine neue Prüfung. Was vorher eingegeben wurde, für {title}, bleibt in {folder}.</translation>
    </message>
    <message>
        <source>A new job. Nothing here is needed to measure; each entry is kept at once.</source>
        <translation>Ein neuer Auftrag. Zum Messen ist hier nichts nötig; jeder Eintrag wird sofort gespeichert.</translation>
    </message>
    <message>
        <source>A part of the program failed: {faults}</source>
        <translation>Ein Teil des Programms ist ausgefallen: {faults}</translation>
    </message>
    <message>
        <source>A part of the window failed{going_on}. Please report: {words}</source>
        <translation>Ein Teil des Fensters ist ausgefallen{going_on}. Bitte melden: {words}</translation>
    </message>
    <message>
        <source>A recording is in progress: ports can be asked once it is stopped.</source>
        <translation>Eine Aufzeichnung läuft: Anschlüsse können gefragt werden, sobald sie beendet ist.</translation>
    </message>
    <message>
        <source>A recording is in progress: press C, or “Compare again”, to compare all the same.</source>
        <translation>Eine Aufzeichnung läuft: C drücken oder „Neu vergleichen“, um trotzdem zu vergleichen.</translation>
    </message>
    <message>
        <source>A second run behind the trace: its folder</source>
        <translation>Ein zweiter Lauf hinter der Kurve: sein Ordner</translation>
    </message>
    <message>
        <source>A4, Letter</source>
        <translation>A4, Letter</translation>
    </message>
    <message>
        <source>ANOTHER DISK: {moved}</source>
        <translation>ANDERER DATENTRÄGER: {moved}</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Dazu</translation>
    </message>
    <message>
        <source>Add a meter</source>
        <translation>Messgerät dazu</translation>
    </message>
    <message>
        <source>Add one on the Meters page.</source>
        <translation>Auf der Seite Messgeräte eines hinzufügen.</translation>
    </message>
    <message>
        <source>Add photos to the job</source>
        <translation>Fotos zum Auftrag hinzufügen</translation>
    </message>
    <message>
        <source>Add photos…</source>
        <translation>Fotos dazu…</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Nachher</translation>
    </message>
    <message>
        <source>After the repair</source>
        <translation>Nach der Reparatur</translation>
    </message>
    <message>
        <source>Airbag wiring</source>
        <translation>Airbagleitungen</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Alles</translation>
    </message>
    <message>
        <source>All (*)</source>
        <translation>Alle (*)</translation>
    </message>
    <message>
        <source>Ambient</source>
        <translation>Umgebung</translation>
    </message>
    <message>
        <source>As found</source>
        <translation>Vorgefunden</translation>
    </message>
    <message>
        <source>Ask these ports  (A)</source>
        <translation>Diese Anschlüsse fragen  (A)</translation>
    </message>
    <message>
        <source>Backspace</source>
        <translation>Rücktaste</translation>
    </message>
    <message>
        <source>Battery</source>
        <translation>Batterie</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
    <message>
        <source>Before / after</source>
        <translation>Vorher/nachher</translation>
    </message>
    <message>
        <source>Before and after are one recording: choose two different ones.</source>
        <translation>Vorher und nachher sind dieselbe Aufzeichnung: zwei verschiedene wählen.</translation>
    </message>
    <message>
        <source>Before the repair</source>
        <translation>Vor der Reparatur</translation>
    </message>
    <message>
        <source>Before the run with the new part:</source>
        <translation>Vor dem Lauf mit dem neuen Teil:</translation>
    </message>
    <message>
        <source>Bind another action, such as the next speed.</source>
        <translation>Eine andere Aktion belegen, etwa die nächste Stufe.</translation>
    </message>
    <message>
        <source>Bind: then press the key or pedal</source>
        <translation>Belegen: dann Taste oder Pedal drücken</translation>
    </message>
    <message>
        <source>By step</source>
        <translation>Nach Stufen</translation>
    </message>
    <message>
        <source>By time</source>
        <translation>Nach Zeit</translation>
    </message>
    <message>
        <source>CHANGED</source>
        <translation>VERÄNDERT</translation>
    </message>
    <message numerus="yes">
        <source>Calibration in date: {many} meters known.</source>
        <translation>
            <numerusform>Kalibrierung gültig: {many} Messgerät bekannt.</numerusform>
            <numerusform>Kalibrierung gültig: {many} Messgeräte bekannt.</numerusform>
        </translation>
    </message>
    <message>
        <source>Can&apos;t reach</source>
        <translation>Unzugänglich</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
    <message>
        <source>Cancel ({key})</source>
        <translation>Abbrechen ({key})</translation>
    </message>
    <message>
        <source>Cancelled. “Compare again” (C) begins anew.</source>
        <translation>Abgebrochen. „Neu vergleichen“ (C) beginnt von vorn.</translation>
    </message>
    <message>
        <source>Cancelled: nothing of the pack is left.</source>
        <translation>Abgebrochen: vom Paket ist nichts übrig.</translation>
    </message>
    <message>
        <source>Cause</source>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>Check a pack or a recording</source>
        <translation>Paket oder Aufzeichnung prüfen</translation>
    </message>
    <message>
        <source>Check it</source>
        <translation>Prüfen</translation>
    </message>
    <message>
        <source>Check that it is on and its lead plugged in, or choose another meter or port on the Meters page.</source>
        <translation>Prüfen, ob es eingeschaltet und seine Leitung eingesteckt ist, oder auf der Seite Messgeräte ein anderes Gerät oder einen anderen Anschluss wählen.</translation>
    </message>
    <message>
        <source>Choose above the port that this meter is plugged into, then start again.</source>
        <translation>Oben den Anschluss wählen, in dem dieses Messgerät steckt, dann neu starten.</translation>
    </message>
    <message>
        <source>Choose an empty folder for the pack</source>
        <translation>Leeren Ordner für das Paket wählen</translation>
    </message>
    <message>
        <source>Choose another folder on the Meters page, then start again.</source>
        <translation>Auf der Seite Messgeräte einen anderen Ordner wählen, dann neu starten.</translation>
    </message>
    <message>
        <source>Choose it again when the disk or the card is there and has room.</source>
        <translation>Noch einmal wählen, wenn Datenträger oder Karte da ist und Platz hat.</translation>
    </message>
    <message>
        <source>Choose one on the Meters page, or type an address such as socket://host:port.</source>
        <translation>Auf der Seite Messgeräte einen wählen oder eine Adresse eintippen, etwa socket://host:port.</translation>
    </message>
    <message>
        <source>Choose the circuit (C).</source>
        <translation>Den Stromlauf wählen (C).</translation>
    </message>
    <message>
        <source>Choose the circuit above: it is drawn here, with its test points.</source>
        <translation>Oben den Stromlauf wählen: hier wird er mit seinen Messpunkten gezeichnet.</translation>
    </message>
    <message>
        <source>Choose the circuit first (C).</source>
        <translation>Erst den Stromlauf wählen (C).</translation>
    </message>
    <message>
        <source>Choose the file of a picture.</source>
        <translation>Die Datei eines Bildes wählen.</translation>
    </message>
    <message>
        <source>Choose the folder of a pack or of a recording</source>
        <translation>Ordner eines Pakets oder einer Aufzeichnung wählen</translation>
    </message>
    <message>
        <source>Choose the folder of one job; they lie in the folder jobs.</source>
        <translation>Den Ordner eines Auftrags wählen; sie liegen im Ordner jobs.</translation>
    </message>
    <message>
        <source>Choose the folder of {title}</source>
        <translation>Den Ordner wählen: {title}</translation>
    </message>
    <message>
        <source>Choose the good ones: take each in from the list Before, or from a folder.</source>
        <translation>Die guten wählen: jede aus der Liste Vorher aufnehmen oder aus einem Ordner.</translation>
    </message>
    <message>
        <source>Choose the one before the repair, the one after it, or both.</source>
        <translation>Die vor der Reparatur wählen, die danach oder beide.</translation>
    </message>
    <message>
        <source>Choose the recording after. Record the new part on the Trace page with the new part fitted (Job page), or choose the folder of a recording.</source>
        <translation>Die Aufzeichnung nachher wählen. Das neue Teil auf der Seite Kurve aufzeichnen, wenn es eingebaut ist (Seite Auftrag), oder den Ordner einer Aufzeichnung wählen.</translation>
    </message>
    <message>
        <source>Choose the recording before. Record the old part on the Trace page with the old part fitted (Job page), or choose the folder of a recording.</source>
        <translation>Die Aufzeichnung vorher wählen. Das alte Teil auf der Seite Kurve aufzeichnen, solange es eingebaut ist (Seite Auftrag), oder den Ordner einer Aufzeichnung wählen.</translation>
    </message>
    <message>
        <source>Choose the zip or the PDF of a pack</source>
        <translation>Zip oder PDF eines Pakets wählen</translation>
    </message>
    <message>
        <source>Choose…</source>
        <translation>Wählen…</translation>
    </message>
    <message>
        <source>Circuit</source>
        <translation>Stromlauf</translation>
    </message>
    <message>
        <source>Circuit checks kept by themselves</source>
        <translation>Einzeln gespeicherte Stromlaufprüfungen</translation>
    </message>
    <message>
        <source>Claim</source>
        <translation>Antrag</translation>
    </message>
    <message>
        <source>Claim number</source>
        <translation>Antragsnummer</translation>
    </message>
    <message>
        <source>Claim number or work order is not stated.</source>
        <translation>Antragsnummer oder Auftragsnummer ist nicht angegeben.</translation>
    </message>
    <message>
        <source>Clear (Q)</source>
        <translation>Leeren (Q)</translation>
    </message>
    <message>
        <source>Click</source>
        <translation>Klicken</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>Compare again</source>
        <translation>Neu vergleichen</translation>
    </message>
    <message>
        <source>Comparing</source>
        <translation>Vergleich läuft</translation>
    </message>
    <message>
        <source>Complaint</source>
        <translation>Beanstandung</translation>
    </message>
    <message>
        <source>Complaint now</source>
        <translation>Fehler jetzt da</translation>
    </message>
    <message>
        <source>Conditions of the next run</source>
        <translation>Bedingungen des nächsten Laufs</translation>
    </message>
    <message>
        <source>Connect and record  (S)</source>
        <translation>Verbinden und aufzeichnen  (S)</translation>
    </message>
    <message>
        <source>Continue</source>
        <translation>Weiter</translation>
    </message>
    <message>
        <source>Continue {last}</source>
        <translation>Weiter mit {last}</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Copy as text</source>
        <translation>Als Text kopieren</translation>
    </message>
    <message>
        <source>Copying photos</source>
        <translation>Fotos werden kopiert</translation>
    </message>
    <message>
        <source>Correction</source>
        <translation>Abhilfe</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>Date code</source>
        <translation>Datumscode</translation>
    </message>
    <message>
        <source>Decimal comma in tables</source>
        <translation>Dezimalkomma in Tabellen</translation>
    </message>
    <message>
        <source>Del</source>
        <translation>Entf</translation>
    </message>
    <message>
        <source>Done again by an edit on top.</source>
        <translation>Durch einen Nachtrag wiederhergestellt.</translation>
    </message>
    <message>
        <source>Down</source>
        <translation>Ab</translation>
    </message>
    <message>
        <source>Drop it</source>
        <translation>Verwerfen</translation>
    </message>
    <message>
        <source>Dropouts of {shortest} s or more can&apos;t be missed.</source>
        <translation>Aussetzer ab {shortest} s können nicht entgehen.</translation>
    </message>
    <message>
        <source>Dropped: nothing had been written.</source>
        <translation>Verworfen: nichts war geschrieben.</translation>
    </message>
    <message>
        <source>Earlier maintenance is not stated.</source>
        <translation>Frühere Wartung ist nicht angegeben.</translation>
    </message>
    <message>
        <source>Edit on top: {one_}</source>
        <translation>Nachtrag: {one_}</translation>
    </message>
    <message>
        <source>Edits are made on top of a recording that is sealed: open one, or stop this one first.</source>
        <translation>Nachträge gibt es nur zu versiegelten Aufzeichnungen: eine öffnen oder diese erst beenden.</translation>
    </message>
    <message>
        <source>Edits are made on top of a recording that is sealed: stop it first.</source>
        <translation>Nachträge gibt es nur zu versiegelten Aufzeichnungen: diese erst beenden.</translation>
    </message>
    <message>
        <source>Edits on top of the recording</source>
        <translation>Nachträge zur Aufzeichnung</translation>
    </message>
    <message>
        <source>Empty fields are filled in from {name}; what stood there stays.</source>
        <translation>Leere Felder sind aus {name} ausgefüllt; was dort stand, bleibt.</translation>
    </message>
    <message>
        <source>End</source>
        <translation>Ende</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Enter</translation>
    </message>
    <message>
        <source>Enter keeps · Esc drops</source>
        <translation>Enter behält · Esc verwirft</translation>
    </message>
    <message>
        <source>Enter keeps · Esc ends</source>
        <translation>Enter behält · Esc beendet</translation>
    </message>
    <message>
        <source>FUSED JUMPER from {label}: choose the other end, then J. J here again: no jumper.</source>
        <translation>ABGESICHERTE BRÜCKE ab {label}: das andere Ende wählen, dann J. Noch einmal J hier: keine Brücke.</translation>
    </message>
    <message>
        <source>Failed on</source>
        <translation>Ausfall am</translation>
    </message>
    <message>
        <source>Fan</source>
        <translation>Gebläse</translation>
    </message>
    <message>
        <source>Fault codes</source>
        <translation>Fehlercodes</translation>
    </message>
    <message>
        <source>Fault codes, or that there were none, are not stated.</source>
        <translation>Fehlercodes, oder dass es keine gab, sind nicht angegeben.</translation>
    </message>
    <message>
        <source>Fill in</source>
        <translation>Ausfüllen</translation>
    </message>
    <message>
        <source>Filter</source>
        <translation>Filter</translation>
    </message>
    <message>
        <source>Find (I)</source>
        <translation>Suchen (I)</translation>
    </message>
    <message>
        <source>Findings</source>
        <translation>Befunde</translation>
    </message>
    <message>
        <source>First of all</source>
        <translation>Zuallererst</translation>
    </message>
    <message>
        <source>Fitted by</source>
        <translation>Eingebaut von</translation>
    </message>
    <message>
        <source>Fitted on, at</source>
        <translation>Eingebaut am, bei</translation>
    </message>
    <message>
        <source>Flap</source>
        <translation>Klappe</translation>
    </message>
    <message>
        <source>Folder…</source>
        <translation>Ordner…</translation>
    </message>
    <message>
        <source>For the claim form</source>
        <translation>Für das Antragsformular</translation>
    </message>
    <message>
        <source>Found: {found_words}</source>
        <translation>Gefunden: {found_words}</translation>
    </message>
    <message>
        <source>Free</source>
        <translation>Lösen</translation>
    </message>
    <message>
        <source>Free some space, or ask for the right to write there.</source>
        <translation>Platz schaffen oder um Schreibrechte dort bitten.</translation>
    </message>
    <message>
        <source>Fuse out</source>
        <translation>Sicherung raus</translation>
    </message>
    <message>
        <source>Fused only, with a fuse no larger than the circuit&apos;s own. Never bridge a fuse that blew.</source>
        <translation>Nur abgesichert, die Sicherung nicht größer als die des Kreises. Nie eine durchgebrannte Sicherung überbrücken.</translation>
    </message>
    <message>
        <source>GONE</source>
        <translation>FEHLT</translation>
    </message>
    <message>
        <source>GONE: its file is not there any more</source>
        <translation>FEHLT: die Datei ist nicht mehr da</translation>
    </message>
    <message>
        <source>Give the template a name first.</source>
        <translation>Zuerst der Vorlage einen Namen geben.</translation>
    </message>
    <message>
        <source>Go in from the back of the connector, don&apos;t pierce insulation, don&apos;t spread terminals. Keep two bare pins from touching.</source>
        <translation>Von hinten in den Stecker messen, keine Isolierung durchstechen, Kontakte nicht aufweiten. Zwei blanke Stifte dürfen sich nicht berühren.</translation>
    </message>
    <message>
        <source>Goes to</source>
        <translation>Geht nach</translation>
    </message>
    <message>
        <source>Good ones ({good}): {names}</source>
        <translation>Gute ({good}): {names}</translation>
    </message>
    <message>
        <source>H: next speed</source>
        <translation>H: nächste Stufe</translation>
    </message>
    <message>
        <source>Here {unit} are read.</source>
        <translation>Hier wird in {unit} gemessen.</translation>
    </message>
    <message>
        <source>High-voltage vehicles</source>
        <translation>Hochvoltfahrzeuge</translation>
    </message>
    <message>
        <source>Home</source>
        <translation>Pos1</translation>
    </message>
    <message>
        <source>Hot parts</source>
        <translation>Heiße Teile</translation>
    </message>
    <message>
        <source>Hours</source>
        <translation>Betriebsstunden</translation>
    </message>
    <message>
        <source>How it is made</source>
        <translation>Wie es gemacht wird</translation>
    </message>
    <message>
        <source>I (A)</source>
        <translation>I (A)</translation>
    </message>
    <message>
        <source>IMPORTED</source>
        <translation>IMPORTIERT</translation>
    </message>
    <message>
        <source>IMPORTED · PARTLY TYPED BY HAND</source>
        <translation>IMPORTIERT · TEILS VON HAND</translation>
    </message>
    <message>
        <source>In service since</source>
        <translation>Im Verkehr seit</translation>
    </message>
    <message>
        <source>In the vehicle now</source>
        <translation>Jetzt im Fahrzeug</translation>
    </message>
    <message>
        <source>Ins</source>
        <translation>Einfg</translation>
    </message>
    <message>
        <source>Intact</source>
        <translation>Unverändert</translation>
    </message>
    <message>
        <source>Invoice</source>
        <translation>Rechnung</translation>
    </message>
    <message>
        <source>It goes from node to node: choose a round test point.</source>
        <translation>Sie geht von Knoten zu Knoten: einen runden Messpunkt wählen.</translation>
    </message>
    <message>
        <source>It is judged in the background.</source>
        <translation>Wird im Hintergrund beurteilt.</translation>
    </message>
    <message>
        <source>It is not sealed: seal it on the Recordings page first.</source>
        <translation>Nicht versiegelt: erst auf der Seite Archiv versiegeln.</translation>
    </message>
    <message>
        <source>It was cut off and never sealed. Seal it (C), then it is judged.</source>
        <translation>Abgebrochen und nie versiegelt. Versiegeln (C), dann wird beurteilt.</translation>
    </message>
    <message>
        <source>It widens the uncertainty, or is taken out by the voltage; for a sharper answer record one again under the conditions of the other.</source>
        <translation>Das vergrößert die Unsicherheit oder wird über die Spannung herausgerechnet; schärfer wird es, wenn eine noch einmal unter den Bedingungen der anderen aufgezeichnet wird.</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Job card</source>
        <translation>Auftragskarte</translation>
    </message>
    <message>
        <source>Job: {known} · {fitted}</source>
        <translation>Auftrag: {known} · {fitted}</translation>
    </message>
    <message>
        <source>Judge {many}</source>
        <translation>{many} beurteilen</translation>
    </message>
    <message>
        <source>Judged by speeds that were found in the current and taken as commanded: nobody recorded them.</source>
        <translation>Beurteilt nach Stufen, die im Strom gefunden und als geschaltet übernommen wurden: niemand hat sie aufgezeichnet.</translation>
    </message>
    <message>
        <source>Judging {to_judge} without a verdict, the newest first</source>
        <translation>{to_judge} ohne Urteil werden beurteilt, die neuesten zuerst</translation>
    </message>
    <message>
        <source>Jumper leads</source>
        <translation>Überbrückungskabel</translation>
    </message>
    <message>
        <source>Jumper out ({jumpers})</source>
        <translation>Brücke raus ({jumpers})</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Keep fingers, hair, sleeves and leads out of the wheel. A motor out of its housing draws more and can jump: fix it, and run it for seconds only.</source>
        <translation>Finger, Haare, Ärmel und Leitungen weg vom Rad. Ein ausgebauter Motor zieht mehr und kann springen: festspannen und nur sekundenlang laufen lassen.</translation>
    </message>
    <message>
        <source>Kept</source>
        <translation>Gespeichert</translation>
    </message>
    <message>
        <source>Kept as template {name}, without what belongs to this one job (customer, complaint, serial numbers, dates, photos).</source>
        <translation>Als Vorlage {name} behalten, ohne was nur zu diesem Auftrag gehört (Kunde, Beanstandung, Seriennummern, Daten, Fotos).</translation>
    </message>
    <message>
        <source>Kept at</source>
        <translation>Aufbewahrt bei</translation>
    </message>
    <message>
        <source>Kept {kept_at}</source>
        <translation>Gespeichert {kept_at}</translation>
    </message>
    <message>
        <source>Key</source>
        <translation>Zündung</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Labour</source>
        <translation>Arbeitszeit</translation>
    </message>
    <message>
        <source>Leave it out</source>
        <translation>Weglassen</translation>
    </message>
    <message>
        <source>Leave out the signs between thousands: 1234{sign}5.</source>
        <translation>Zeichen zwischen Tausendern weglassen: 1234{sign}5.</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Links</translation>
    </message>
    <message>
        <source>Left out: {names}, and where other entries repeat them.</source>
        <translation>Weggelassen: {names}, auch wo andere Einträge sie wiederholen.</translation>
    </message>
    <message>
        <source>Letter</source>
        <translation>Letter</translation>
    </message>
    <message>
        <source>Look for ports again</source>
        <translation>Anschlüsse neu suchen</translation>
    </message>
    <message>
        <source>Look into another folder: choose it</source>
        <translation>In weiterem Ordner suchen: Ordner wählen</translation>
    </message>
    <message>
        <source>Maintenance before</source>
        <translation>Frühere Wartung</translation>
    </message>
    <message>
        <source>Make it smaller, or choose another.</source>
        <translation>Kleiner machen oder ein anderes wählen.</translation>
    </message>
    <message>
        <source>Make the claim pack</source>
        <translation>Antragspaket machen</translation>
    </message>
    <message>
        <source>Make, model and year of the vehicle are not stated.</source>
        <translation>Marke, Modell und Baujahr des Fahrzeugs sind nicht angegeben.</translation>
    </message>
    <message>
        <source>Making the pack</source>
        <translation>Das Paket wird gemacht</translation>
    </message>
    <message>
        <source>Measured by</source>
        <translation>Gemessen von</translation>
    </message>
    <message>
        <source>Meter</source>
        <translation>Messgerät</translation>
    </message>
    <message>
        <source>Meters</source>
        <translation>Messgeräte</translation>
    </message>
    <message>
        <source>Meters, Circuit, Trace; else: stop</source>
        <translation>Messgeräte, Stromlauf, Kurve; sonst Stopp</translation>
    </message>
    <message>
        <source>Missing for a claim: {missing}</source>
        <translation>Für den Antrag fehlen: {missing}</translation>
    </message>
    <message>
        <source>More than one voltage channel: choose the probe (V), or type the value (R).</source>
        <translation>Mehr als ein Spannungskanal: Messspitze wählen (V) oder den Wert eintippen (R).</translation>
    </message>
    <message>
        <source>Moving fan</source>
        <translation>Laufendes Gebläse</translation>
    </message>
    <message>
        <source>NEXT</source>
        <translation>JETZT</translation>
    </message>
    <message>
        <source>NEXT  {letter}{test} ({minutes})</source>
        <translation>JETZT  {letter}{test} ({minutes})</translation>
    </message>
    <message>
        <source>NO READINGS FROM {names}: {reason}</source>
        <translation>KEINE MESSWERTE VON {names}: {reason}</translation>
    </message>
    <message>
        <source>NOT CONNECTED</source>
        <translation>NICHT VERBUNDEN</translation>
    </message>
    <message>
        <source>NOT WRITTEN YET: </source>
        <translation>NOCH NICHT GESCHRIEBEN: </translation>
    </message>
    <message>
        <source>NOTHING IS BEING KEPT: {failed}</source>
        <translation>ES WIRD NICHTS GESPEICHERT: {failed}</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Bezeichnung</translation>
    </message>
    <message>
        <source>Never probe or ohm it, and never lean a pin against it; its connectors are often yellow. Make the system safe as the manual says before working behind the dash.</source>
        <translation>Nie daran messen, auch kein Ohm, und keine Spitze anlehnen; die Stecker sind oft gelb. Vor Arbeiten hinter der Armaturentafel nach Handbuch stilllegen.</translation>
    </message>
    <message>
        <source>New job</source>
        <translation>Neuer Auftrag</translation>
    </message>
    <message>
        <source>New part</source>
        <translation>Neues Teil</translation>
    </message>
    <message>
        <source>Next (G or /)</source>
        <translation>Weiter (G oder /)</translation>
    </message>
    <message>
        <source>No current is known of what is chosen: it is not judged yet, or no speed was commanded.</source>
        <translation>Von der Auswahl ist kein Strom bekannt: noch nicht beurteilt, oder keine Stufe war geschaltet.</translation>
    </message>
    <message>
        <source>No edits were made.</source>
        <translation>Keine Nachträge.</translation>
    </message>
    <message>
        <source>No key of your own for: {action}.</source>
        <translation>Keine eigene Taste für: {action}.</translation>
    </message>
    <message>
        <source>No meter is running: press R and type the {what}, or start one (Enter).</source>
        <translation>Kein Messgerät läuft: R drücken und {what} eintippen, oder eines starten (Enter).</translation>
    </message>
    <message>
        <source>No meter of this recording is typed by hand: add typed-volts or typed-amps on the Meters page.</source>
        <translation>Kein Messgerät dieser Aufzeichnung wird von Hand eingetippt: auf der Seite Messgeräte typed-volts oder typed-amps hinzufügen.</translation>
    </message>
    <message>
        <source>No program opens it here. It lies at {path}.</source>
        <translation>Kein Programm öffnet es hier. Es liegt in {path}.</translation>
    </message>
    <message>
        <source>No recording: the pack will say nothing of this side.</source>
        <translation>Keine Aufzeichnung: das Paket sagt zu dieser Seite nichts.</translation>
    </message>
    <message>
        <source>No running meter reads a {what}: press R and type it.</source>
        <translation>Kein laufendes Messgerät misst {what}: R drücken und eintippen.</translation>
    </message>
    <message>
        <source>No serial port is plugged in. Plug one in and look again, or add an address.</source>
        <translation>Kein serieller Anschluss steckt. Einen einstecken und neu suchen, oder eine Adresse hinzufügen.</translation>
    </message>
    <message>
        <source>No speed was recorded. {found} speed steps were found in the current; their numbers are proposals, by order of current.</source>
        <translation>Keine Stufe wurde aufgezeichnet. Im Strom wurden {found} Stufen gefunden; ihre Nummern sind Vorschläge, nach dem Strom geordnet.</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Noch keine.</translation>
    </message>
    <message>
        <source>None yet: label with date code, odometer, plug, filter.</source>
        <translation>Noch keine: Typenschild mit Datumscode, Kilometerstand, Stecker, Filter.</translation>
    </message>
    <message>
        <source>None. Those made while recording go in with the run.</source>
        <translation>Keine. Beim Aufzeichnen gemachte gehen mit dem Lauf hinein.</translation>
    </message>
    <message>
        <source>Not checked</source>
        <translation>Nicht geprüft</translation>
    </message>
    <message>
        <source>Not judged: the trace is shown, nothing is said of it. Open it again to judge.</source>
        <translation>Nicht beurteilt: die Kurve ist zu sehen, gesagt ist zu ihr nichts. Noch einmal öffnen, um zu beurteilen.</translation>
    </message>
    <message>
        <source>Not judged: what stands here is the trace alone. Nothing is said of it yet.</source>
        <translation>Nicht beurteilt: hier steht nur die Kurve. Zu ihr ist noch nichts gesagt.</translation>
    </message>
    <message>
        <source>Not kept yet: {names}.</source>
        <translation>Noch nicht gespeichert: {names}.</translation>
    </message>
    <message>
        <source>Not kept: {left}. Close once more to leave without it.</source>
        <translation>Nicht behalten: {left}. Noch einmal schließen, um ohne das zu gehen.</translation>
    </message>
    <message>
        <source>Not seen: {what}</source>
        <translation>Nicht zu sehen: {what}</translation>
    </message>
    <message>
        <source>Not signed</source>
        <translation>Nicht unterschrieben</translation>
    </message>
    <message>
        <source>Not stated on both sides: {names}. It holds only if these were the same.</source>
        <translation>Auf beiden Seiten nicht angegeben: {names}. Es gilt nur, wenn diese gleich waren.</translation>
    </message>
    <message>
        <source>Not stated, and a reviewer will ask: {missing}. Fill in on the Job page.</source>
        <translation>Nicht angegeben, und ein Prüfer wird fragen: {missing}. Auf der Seite Auftrag ausfüllen.</translation>
    </message>
    <message>
        <source>Not taken, {taken}.</source>
        <translation>Nicht genommen, {taken}.</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>Note: </source>
        <translation>Hinweis: </translation>
    </message>
    <message>
        <source>Note: {note}</source>
        <translation>Hinweis: {note}</translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Bemerkungen</translation>
    </message>
    <message>
        <source>Nothing found yet.</source>
        <translation>Noch nichts gefunden.</translation>
    </message>
    <message>
        <source>Nothing is being recorded: press Enter to start.</source>
        <translation>Nichts wird aufgezeichnet: Enter drücken zum Starten.</translation>
    </message>
    <message>
        <source>Nothing is missing for a claim</source>
        <translation>Für den Antrag fehlt nichts</translation>
    </message>
    <message>
        <source>Nothing is missing for a claim.</source>
        <translation>Für einen Antrag fehlt nichts.</translation>
    </message>
    <message>
        <source>Nothing is stated yet.</source>
        <translation>Noch ist nichts angegeben.</translation>
    </message>
    <message>
        <source>Nothing more is proposed: the verdict stands, with what confirms it.</source>
        <translation>Mehr wird nicht vorgeschlagen: das Urteil steht, mit dem, was es bestätigt.</translation>
    </message>
    <message>
        <source>Nothing to show yet.

Choose the meters on the Meters page (M), then press Enter to start,
or press O to open a recording.</source>
        <translation>Noch nichts zu zeigen.

Auf der Seite Messgeräte (M) die Messgeräte wählen, dann Enter zum Starten,
oder O drücken, um eine Aufzeichnung zu öffnen.</translation>
    </message>
    <message>
        <source>Nothing was bound.</source>
        <translation>Nichts wurde belegt.</translation>
    </message>
    <message>
        <source>Nothing was found.</source>
        <translation>Nichts gefunden.</translation>
    </message>
    <message>
        <source>Nothing within reach would tell more.</source>
        <translation>Nichts Erreichbares würde mehr sagen.</translation>
    </message>
    <message>
        <source>Nothing within reach would tell more: see the verdict.</source>
        <translation>Nichts Erreichbares würde mehr sagen: siehe das Urteil.</translation>
    </message>
    <message>
        <source>Number and date of the new part&apos;s invoice are not stated.</source>
        <translation>Nummer und Datum der Rechnung des neuen Teils sind nicht angegeben.</translation>
    </message>
    <message>
        <source>OVERLOAD</source>
        <translation>ÜBERLAUF</translation>
    </message>
    <message>
        <source>Odometer in</source>
        <translation>Kilometerstand Annahme</translation>
    </message>
    <message>
        <source>Odometer or hours are not stated.</source>
        <translation>Kilometerstand oder Betriebsstunden sind nicht angegeben.</translation>
    </message>
    <message>
        <source>Odometer out</source>
        <translation>Kilometerstand Abgabe</translation>
    </message>
    <message>
        <source>Old part</source>
        <translation>Altes Teil</translation>
    </message>
    <message>
        <source>Only photos are missing.</source>
        <translation>Nur Fotos fehlen.</translation>
    </message>
    <message>
        <source>Open a job: choose its folder</source>
        <translation>Auftrag öffnen: seinen Ordner wählen</translation>
    </message>
    <message>
        <source>Open a recording: choose its folder</source>
        <translation>Aufzeichnung öffnen: ihren Ordner wählen</translation>
    </message>
    <message>
        <source>Open another folder…  (O)</source>
        <translation>Anderen Ordner öffnen…  (O)</translation>
    </message>
    <message>
        <source>Open its folder</source>
        <translation>Ordner öffnen</translation>
    </message>
    <message>
        <source>Open job…</source>
        <translation>Auftrag öffnen…</translation>
    </message>
    <message>
        <source>Open the PDF</source>
        <translation>PDF öffnen</translation>
    </message>
    <message>
        <source>Open…</source>
        <translation>Öffnen…</translation>
    </message>
    <message>
        <source>Operation code and labour hours are not stated.</source>
        <translation>Arbeitsposition und Arbeitszeit sind nicht angegeben.</translation>
    </message>
    <message>
        <source>Order</source>
        <translation>Auftragsnummer</translation>
    </message>
    <message>
        <source>Order and vehicle</source>
        <translation>Auftrag und Fahrzeug</translation>
    </message>
    <message>
        <source>Others may be typed: clamp 20 mV/A, shunt 0.6 mOhm, divider 20</source>
        <translation>Andere lassen sich eintippen: Zange 20 mV/A, Shunt 0,6 mOhm, Teiler 20</translation>
    </message>
    <message>
        <source>Other…</source>
        <translation>Andere…</translation>
    </message>
    <message>
        <source>Out of reach: {place}.</source>
        <translation>Unzugänglich: {place}.</translation>
    </message>
    <message>
        <source>PARTLY TYPED BY HAND</source>
        <translation>TEILS VON HAND EINGETIPPT</translation>
    </message>
    <message>
        <source>Packs (*.zip *.pdf)</source>
        <translation>Pakete (*.zip *.pdf)</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Part number</source>
        <translation>Teilenummer</translation>
    </message>
    <message>
        <source>Passphrase for the key that is made now; empty for none</source>
        <translation>Passwort für den Schlüssel, der jetzt entsteht; leer: keines</translation>
    </message>
    <message>
        <source>Passphrase of the key</source>
        <translation>Passwort des Schlüssels</translation>
    </message>
    <message>
        <source>PgDn</source>
        <translation>Bild↓</translation>
    </message>
    <message>
        <source>PgDown</source>
        <translation>Bild↓</translation>
    </message>
    <message>
        <source>PgUp</source>
        <translation>Bild↑</translation>
    </message>
    <message>
        <source>Photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>Photos are being copied: add these when that is done.</source>
        <translation>Fotos werden kopiert: diese danach hinzufügen.</translation>
    </message>
    <message>
        <source>Photos: {thumbs}</source>
        <translation>Fotos: {thumbs}</translation>
    </message>
    <message>
        <source>Pictures ({names})</source>
        <translation>Bilder ({names})</translation>
    </message>
    <message>
        <source>Plate</source>
        <translation>Kennzeichen</translation>
    </message>
    <message>
        <source>Plug off</source>
        <translation>Stecker ab</translation>
    </message>
    <message>
        <source>Ports</source>
        <translation>Anschlüsse</translation>
    </message>
    <message>
        <source>Press Enter (or S) once more within 2 seconds to stop and seal.</source>
        <translation>Enter (oder S) binnen 2 Sekunden noch einmal drücken, um zu beenden und zu versiegeln.</translation>
    </message>
    <message>
        <source>Press another key.</source>
        <translation>Eine andere Taste drücken.</translation>
    </message>
    <message>
        <source>Press the key or pedal for: {listening}. Esc: none.</source>
        <translation>Taste oder Pedal drücken für: {listening}. Esc: keine.</translation>
    </message>
    <message>
        <source>Probing</source>
        <translation>Messen mit Spitzen</translation>
    </message>
    <message>
        <source>Put back</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <source>Put in again</source>
        <translation>Wieder eingesetzt</translation>
    </message>
    <message>
        <source>Put in again: {words}.</source>
        <translation>Wieder eingesetzt: {words}.</translation>
    </message>
    <message>
        <source>REPEAT: {one_}</source>
        <translation>WIEDERHOLEN: {one_}</translation>
    </message>
    <message>
        <source>Reading what is new in the folders</source>
        <translation>Neues in den Ordnern wird gelesen</translation>
    </message>
    <message>
        <source>Recordings</source>
        <translation>Archiv</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Repaired on</source>
        <translation>Repariert am</translation>
    </message>
    <message>
        <source>Resistor packs and controllers stay hot after running. Ignition and fan off before unplugging: the plug arcs under load.</source>
        <translation>Widerstände und Regler bleiben nach dem Lauf heiß. Vor dem Abziehen Zündung und Gebläse aus: unter Last zieht der Stecker einen Lichtbogen.</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Return</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Rechts</translation>
    </message>
    <message>
        <source>SIMULATED</source>
        <translation>SIMULIERT</translation>
    </message>
    <message>
        <source>SIMULATED · PARTLY TYPED BY HAND</source>
        <translation>SIMULIERT · TEILS VON HAND</translation>
    </message>
    <message>
        <source>Say who makes the edit.</source>
        <translation>Angeben, wer den Nachtrag macht.</translation>
    </message>
    <message>
        <source>Say why, then write it: a reviewer will ask.</source>
        <translation>Den Grund angeben, dann schreiben: ein Prüfer wird fragen.</translation>
    </message>
    <message>
        <source>Sealing the recording… the window closes by itself when that is done.</source>
        <translation>Die Aufzeichnung wird versiegelt… danach schließt das Fenster von selbst.</translation>
    </message>
    <message>
        <source>See `meterlog ports` for those that are there.</source>
        <translation>Die vorhandenen zeigt `meterlog ports`.</translation>
    </message>
    <message>
        <source>See there why, or empty the field; then turn to the other job.</source>
        <translation>Dort nachsehen, warum, oder das Feld leeren; dann zum anderen Auftrag wechseln.</translation>
    </message>
    <message>
        <source>Serial number</source>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <source>Should be: {expected_words}</source>
        <translation>Soll: {expected_words}</translation>
    </message>
    <message>
        <source>Show as found again (C)</source>
        <translation>Wieder als gefunden zeigen (C)</translation>
    </message>
    <message>
        <source>Signed by the key {fingerprint}</source>
        <translation>Unterschrieben mit dem Schlüssel {fingerprint}</translation>
    </message>
    <message>
        <source>Signed with the key of this machine</source>
        <translation>Mit dem Schlüssel dieses Rechners unterschrieben</translation>
    </message>
    <message>
        <source>Since when the vehicle is in service is not stated.</source>
        <translation>Seit wann das Fahrzeug im Verkehr ist, ist nicht angegeben.</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>Speed steps, steady part</source>
        <translation>Stufen, eingeschwungen</translation>
    </message>
    <message>
        <source>Speed {speed}: mean {mean_a} A of {many}</source>
        <translation>Stufe {speed}: Mittel {mean_a} A aus {many}</translation>
    </message>
    <message>
        <source>Start</source>
        <translation>Start</translation>
    </message>
    <message>
        <source>Start it first.</source>
        <translation>Erst starten.</translation>
    </message>
    <message>
        <source>Stay off orange cables and anything above 60 V DC. Only the 12 V or 24 V fan circuit, and only if you are trained for the vehicle.</source>
        <translation>Von orangen Kabeln und allem über 60 V Gleichspannung fernbleiben. Nur der Gebläsekreis mit 12 V oder 24 V, und nur mit Unterweisung für das Fahrzeug.</translation>
    </message>
    <message>
        <source>Steps found in the current, taken as commanded</source>
        <translation>Im Strom gefundene Stufen, als geschaltet übernommen</translation>
    </message>
    <message>
        <source>Steps found in the current; 2?: speed 2 proposed</source>
        <translation>Im Strom gefundene Stufen; 2?: Vorschlag Stufe 2</translation>
    </message>
    <message>
        <source>Stop asking  (A)</source>
        <translation>Nicht mehr fragen  (A)</translation>
    </message>
    <message>
        <source>Stop the recording first.</source>
        <translation>Erst die Aufzeichnung beenden.</translation>
    </message>
    <message>
        <source>Stop the recording first; then open another one.</source>
        <translation>Erst die Aufzeichnung beenden; dann eine andere öffnen.</translation>
    </message>
    <message>
        <source>Stopping…</source>
        <translation>Wird beendet…</translation>
    </message>
    <message>
        <source>Such as 12{sign}5.</source>
        <translation>Etwa 12{sign}5.</translation>
    </message>
    <message>
        <source>Such as {number} {unit}.</source>
        <translation>Etwa {number} {unit}.</translation>
    </message>
    <message>
        <source>THEN</source>
        <translation>DANN</translation>
    </message>
    <message>
        <source>TYPED BY HAND</source>
        <translation>VON HAND EINGETIPPT</translation>
    </message>
    <message>
        <source>Take  (Space)</source>
        <translation>Nehmen  (Leertaste)</translation>
    </message>
    <message>
        <source>Take in</source>
        <translation>Aufnehmen</translation>
    </message>
    <message>
        <source>Take off</source>
        <translation>Abnehmen</translation>
    </message>
    <message>
        <source>Take out</source>
        <translation>Herausnehmen</translation>
    </message>
    <message>
        <source>Take them as commanded (C)</source>
        <translation>Als geschaltet übernehmen (C)</translation>
    </message>
    <message>
        <source>Taken back</source>
        <translation>Zurückgenommen</translation>
    </message>
    <message>
        <source>Taken back: {what}.</source>
        <translation>Zurückgenommen: {what}.</translation>
    </message>
    <message>
        <source>Taken back: {words}.</source>
        <translation>Zurückgenommen: {words}.</translation>
    </message>
    <message>
        <source>Tap</source>
        <translation>Klopfen</translation>
    </message>
    <message>
        <source>Template</source>
        <translation>Vorlage</translation>
    </message>
    <message>
        <source>The ambient temperature is not stated.</source>
        <translation>Die Umgebungstemperatur ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The cause is not stated.</source>
        <translation>Die Ursache ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The circuit {title} has speeds 0 to {most} only.</source>
        <translation>Der Stromlauf {title} hat nur die Stufen 0 bis {most}.</translation>
    </message>
    <message>
        <source>The complaint, in the customer&apos;s own words, is not stated.</source>
        <translation>Die Beanstandung in den Worten des Kunden ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The conditions of the first run are not known: {trouble}</source>
        <translation>Die Bedingungen des ersten Laufs sind nicht bekannt: {trouble}</translation>
    </message>
    <message>
        <source>The correction, what was done, is not stated.</source>
        <translation>Die Abhilfe, was getan wurde, ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The date of failure is not stated.</source>
        <translation>Das Datum des Ausfalls ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The date of repair is not stated.</source>
        <translation>Das Datum der Reparatur ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The disk does not keep up: {waiting} pieces wait. None is lost yet.</source>
        <translation>Der Datenträger kommt nicht mit: {waiting} Stücke warten. Noch ist keines verloren.</translation>
    </message>
    <message>
        <source>The disk is nearly full: {disk}.</source>
        <translation>Der Datenträger ist fast voll: {disk}.</translation>
    </message>
    <message>
        <source>The job has no other run yet. Another folder can be chosen once recording ends.</source>
        <translation>Der Auftrag hat noch keinen anderen Lauf. Ein anderer Ordner lässt sich wählen, sobald die Aufzeichnung endet.</translation>
    </message>
    <message>
        <source>The new part&apos;s date code is not stated.</source>
        <translation>Der Datumscode des neuen Teils ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The new part&apos;s number is not stated.</source>
        <translation>Die Nummer des neuen Teils ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The new part&apos;s serial number is not stated.</source>
        <translation>Die Seriennummer des neuen Teils ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The next test is being worked out.</source>
        <translation>Die nächste Messung wird ermittelt.</translation>
    </message>
    <message>
        <source>The odometer when the vehicle left is not stated.</source>
        <translation>Der Kilometerstand bei der Abgabe ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The old part&apos;s date code is not stated.</source>
        <translation>Der Datumscode des alten Teils ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The old part&apos;s number is not stated.</source>
        <translation>Die Nummer des alten Teils ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The old part&apos;s serial number is not stated.</source>
        <translation>Die Seriennummer des alten Teils ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The pack is being made. Close once more to leave without it.</source>
        <translation>Das Paket wird gemacht. Noch einmal schließen, um ohne es zu gehen.</translation>
    </message>
    <message>
        <source>The pack is made: {folder}</source>
        <translation>Das Paket ist fertig: {folder}</translation>
    </message>
    <message>
        <source>The picture shows what was read; the table&apos;s currents are at one voltage for both.</source>
        <translation>Das Bild zeigt, was gemessen wurde; die Ströme der Tabelle gelten für beide bei einer Spannung.</translation>
    </message>
    <message>
        <source>The position of the flap is not stated.</source>
        <translation>Die Stellung der Klappe ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The recording can&apos;t be read any more: {why} Check that its disk is there.</source>
        <translation>Die Aufzeichnung ist nicht mehr lesbar: {why} Prüfen, ob ihr Datenträger da ist.</translation>
    </message>
    <message>
        <source>The recording {side}: choose its folder</source>
        <translation>Die Aufzeichnung {side}: ihren Ordner wählen</translation>
    </message>
    <message>
        <source>The second run waits for a commanded speed, or a rise of the current, to begin with.</source>
        <translation>Der zweite Lauf wartet auf eine geschaltete Stufe oder einen Anstieg des Stroms, um zu beginnen.</translation>
    </message>
    <message>
        <source>The sensor&apos;s accuracy from its data sheet: percent of the reading, + volts or amperes. It widens the uncertainty of every figure; left empty, the report says that it is not in.</source>
        <translation>Die Genauigkeit des Aufnehmers nach Datenblatt: Prozent vom Messwert, + Volt oder Ampere. Sie vergrößert die Unsicherheit jeder Zahl; bleibt sie leer, sagt der Bericht, dass sie fehlt.</translation>
    </message>
    <message>
        <source>The state of the battery is not stated.</source>
        <translation>Der Zustand der Batterie ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The state of the filter is not stated.</source>
        <translation>Der Zustand des Filters ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The vehicle&apos;s service manual and the local safety rules come before anything shown here.</source>
        <translation>Das Werkstatthandbuch des Fahrzeugs und die örtlichen Sicherheitsregeln gehen allem hier Gezeigten vor.</translation>
    </message>
    <message>
        <source>The window could not be filled. Please report: {words}</source>
        <translation>Das Fenster konnte nicht gefüllt werden. Bitte melden: {words}</translation>
    </message>
    <message>
        <source>The workshop that claims, with a contact, is not stated.</source>
        <translation>Die beantragende Werkstatt, mit Ansprechpartner, ist nicht angegeben.</translation>
    </message>
    <message>
        <source>There is no other voltage channel to choose from.</source>
        <translation>Es gibt keinen anderen Spannungskanal zur Wahl.</translation>
    </message>
    <message>
        <source>There is no photo: label with date code, odometer, plug, filter.</source>
        <translation>Es gibt kein Foto: Typenschild mit Datumscode, Kilometerstand, Stecker, Filter.</translation>
    </message>
    <message>
        <source>There is no recording to claim by.</source>
        <translation>Es gibt keine Aufzeichnung für den Antrag.</translation>
    </message>
    <message>
        <source>There is nothing to take back here.</source>
        <translation>Hier gibt es nichts zurückzunehmen.</translation>
    </message>
    <message>
        <source>There is nothing to take back or to put in again.</source>
        <translation>Es gibt nichts zurückzunehmen oder wieder einzusetzen.</translation>
    </message>
    <message>
        <source>This can&apos;t be done now: {why}.</source>
        <translation>Das geht jetzt nicht: {why}.</translation>
    </message>
    <message>
        <source>Tick the ports that may be asked. No other is opened or sent anything.</source>
        <translation>Die Anschlüsse ankreuzen, die gefragt werden dürfen. Kein anderer wird geöffnet, keinem anderen wird etwas gesendet.</translation>
    </message>
    <message>
        <source>Tick “pair by order of current” above.</source>
        <translation>Oben „nach Strom paaren“ ankreuzen.</translation>
    </message>
    <message>
        <source>Trace</source>
        <translation>Kurve</translation>
    </message>
    <message>
        <source>Try again.</source>
        <translation>Noch einmal versuchen.</translation>
    </message>
    <message>
        <source>Typed by hand</source>
        <translation>Von Hand</translation>
    </message>
    <message>
        <source>U (V)</source>
        <translation>U (V)</translation>
    </message>
    <message>
        <source>USB {vendor}:{product}</source>
        <translation>USB {vendor}:{product}</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Undone by an edit on top; both stay listed.</source>
        <translation>Durch einen Nachtrag zurückgenommen; beide bleiben aufgeführt.</translation>
    </message>
    <message>
        <source>Up</source>
        <translation>Auf</translation>
    </message>
    <message>
        <source>Use it</source>
        <translation>Verwenden</translation>
    </message>
    <message>
        <source>VIN</source>
        <translation>FIN</translation>
    </message>
    <message>
        <source>VIN or plate of the vehicle is not stated.</source>
        <translation>FIN oder Kennzeichen des Fahrzeugs ist nicht angegeben.</translation>
    </message>
    <message>
        <source>Vehicle</source>
        <translation>Fahrzeug</translation>
    </message>
    <message>
        <source>Volts: leads in the V jack, never left in the current jack. The current jack ends at its fuse, often 10 A: a starting fan opens it, so use a clamp. Use leads and a meter of CAT III 600 V or better.</source>
        <translation>Spannung: Leitungen in der Buchse V, nie in der Strombuchse lassen. Hinter der Strombuchse sitzt eine Sicherung, oft 10 A: ein anlaufendes Gebläse löst sie aus, also eine Stromzange nehmen. Leitungen und Messgerät mindestens CAT III 600 V.</translation>
    </message>
    <message>
        <source>Watch a folder…</source>
        <translation>Ordner dazu…</translation>
    </message>
    <message>
        <source>What is proposed is to look, not to measure: {test}</source>
        <translation>Vorgeschlagen ist Hinsehen, nicht Messen: {test}</translation>
    </message>
    <message>
        <source>What was kept to draw this recording quickly does not fit its readings. It is made anew from them.</source>
        <translation>Was zum schnellen Zeichnen dieser Aufzeichnung behalten wurde, passt nicht zu ihren Messwerten. Es wird aus ihnen neu gemacht.</translation>
    </message>
    <message>
        <source>Wheel</source>
        <translation>Rad</translation>
    </message>
    <message>
        <source>When, and at what odometer, the old part was fitted is not stated.</source>
        <translation>Wann und bei welchem Kilometerstand das alte Teil eingebaut wurde, ist nicht angegeben.</translation>
    </message>
    <message>
        <source>Where the old part is kept is not stated.</source>
        <translation>Wo das alte Teil aufbewahrt wird, ist nicht angegeben.</translation>
    </message>
    <message>
        <source>Who fitted the new part is not stated.</source>
        <translation>Wer das neue Teil eingebaut hat, ist nicht angegeben.</translation>
    </message>
    <message>
        <source>Who measured is not stated.</source>
        <translation>Wer gemessen hat, ist nicht angegeben.</translation>
    </message>
    <message>
        <source>Withdraw</source>
        <translation>Zurückziehen</translation>
    </message>
    <message>
        <source>Within reach again: {place}.</source>
        <translation>Wieder zugänglich: {place}.</translation>
    </message>
    <message>
        <source>Without customer data</source>
        <translation>Ohne Kundendaten</translation>
    </message>
    <message>
        <source>Work done</source>
        <translation>Ausgeführte Arbeit</translation>
    </message>
    <message>
        <source>Work order</source>
        <translation>Auftragsnummer</translation>
    </message>
    <message>
        <source>Workshop that claims</source>
        <translation>Beantragende Werkstatt</translation>
    </message>
    <message>
        <source>Write the edit</source>
        <translation>Nachtrag schreiben</translation>
    </message>
    <message>
        <source>Written on top of the recording, which stays as it is.</source>
        <translation>Als Nachtrag zur Aufzeichnung geschrieben; sie selbst bleibt, wie sie ist.</translation>
    </message>
    <message>
        <source>Your own keys could not be read from {path}: {error}</source>
        <translation>Die eigenen Tasten konnten nicht aus {path} gelesen werden: {error}</translation>
    </message>
    <message>
        <source>Zip or PDF…</source>
        <translation>Zip oder PDF…</translation>
    </message>
    <message>
        <source>a circuit check</source>
        <translation>eine Stromlaufprüfung</translation>
    </message>
    <message>
        <source>a recording with the {part}</source>
        <translation>eine Aufzeichnung: {part}</translation>
    </message>
    <message>
        <source>a virtual meter: nothing is measured</source>
        <translation>ein virtuelles Messgerät: nichts wird gemessen</translation>
    </message>
    <message>
        <source>about a minute</source>
        <translation>etwa eine Minute</translation>
    </message>
    <message>
        <source>about the edit</source>
        <translation>zum Nachtrag</translation>
    </message>
    <message>
        <source>about the {name}</source>
        <translation>zu: {name}</translation>
    </message>
    <message>
        <source>about {minutes} min</source>
        <translation>etwa {minutes} min</translation>
    </message>
    <message>
        <source>across the motor</source>
        <translation>am Motor</translation>
    </message>
    <message>
        <source>add a meter</source>
        <translation>ein Messgerät hinzufügen</translation>
    </message>
    <message>
        <source>add photos</source>
        <translation>Fotos dazu</translation>
    </message>
    <message>
        <source>add this address to the ports</source>
        <translation>diese Adresse zu den Anschlüssen hinzufügen</translation>
    </message>
    <message>
        <source>address of another port</source>
        <translation>Adresse eines weiteren Anschlusses</translation>
    </message>
    <message>
        <source>after: new ({labels})</source>
        <translation>nachher: neu ({labels})</translation>
    </message>
    <message>
        <source>after: new{which}</source>
        <translation>nachher: neu{which}</translation>
    </message>
    <message>
        <source>air comes from</source>
        <translation>Luft kommt von</translation>
    </message>
    <message>
        <source>air goes to</source>
        <translation>Luft geht nach</translation>
    </message>
    <message>
        <source>alarm</source>
        <translation>Alarm</translation>
    </message>
    <message>
        <source>all</source>
        <translation>alles</translation>
    </message>
    <message>
        <source>all folders</source>
        <translation>alle Ordner</translation>
    </message>
    <message>
        <source>all kinds</source>
        <translation>alle Arten</translation>
    </message>
    <message>
        <source>all verdicts</source>
        <translation>alle Urteile</translation>
    </message>
    <message>
        <source>allowed difference, %</source>
        <translation>erlaubter Unterschied, %</translation>
    </message>
    <message>
        <source>ambient</source>
        <translation>Umgebung</translation>
    </message>
    <message>
        <source>another address, such as socket://host:port</source>
        <translation>weitere Adresse, etwa socket://host:port</translation>
    </message>
    <message>
        <source>answers as {profile} · {fit}</source>
        <translation>antwortet als {profile} · {fit}</translation>
    </message>
    <message>
        <source>as last time</source>
        <translation>wie letztes Mal</translation>
    </message>
    <message>
        <source>ask ports</source>
        <translation>Anschlüsse fragen</translation>
    </message>
    <message>
        <source>ask the ticked ports</source>
        <translation>die angekreuzten fragen</translation>
    </message>
    <message>
        <source>ask the ticked ports which meter is on them</source>
        <translation>die angekreuzten Anschlüsse fragen, welches Messgerät daran ist</translation>
    </message>
    <message>
        <source>at V</source>
        <translation>bei V</translation>
    </message>
    <message>
        <source>at speed {speeds}</source>
        <translation>bei Stufe {speeds}</translation>
    </message>
    <message>
        <source>at speeds {names} and {speeds}</source>
        <translation>bei den Stufen {names} und {speeds}</translation>
    </message>
    <message>
        <source>at the end, for</source>
        <translation>am Ende, seit</translation>
    </message>
    <message>
        <source>at, s</source>
        <translation>bei, s</translation>
    </message>
    <message>
        <source>automatic</source>
        <comment>condition</comment>
        <translation>automatisch</translation>
    </message>
    <message>
        <source>battery</source>
        <translation>Batterie</translation>
    </message>
    <message>
        <source>battery, fan off</source>
        <translation>Batterie, Gebläse aus</translation>
    </message>
    <message>
        <source>before / after</source>
        <translation>vorher / nachher</translation>
    </message>
    <message>
        <source>before: 1 good one</source>
        <translation>vorher: 1 gute</translation>
    </message>
    <message>
        <source>before: old</source>
        <translation>vorher: alt</translation>
    </message>
    <message>
        <source>before: several motors known to be good</source>
        <translation>vorher: mehrere als gut bekannte Motoren</translation>
    </message>
    <message>
        <source>before: {many} good ones</source>
        <translation>vorher: {many} gute</translation>
    </message>
    <message>
        <source>begin a new job</source>
        <translation>einen neuen Auftrag beginnen</translation>
    </message>
    <message>
        <source>behind: {folder} {mark}</source>
        <translation>dahinter: {folder} {mark}</translation>
    </message>
    <message>
        <source>being read…</source>
        <translation>wird gelesen…</translation>
    </message>
    <message>
        <source>bench</source>
        <comment>condition</comment>
        <translation>Werkbank</translation>
    </message>
    <message>
        <source>bench, no wheel</source>
        <comment>condition</comment>
        <translation>Werkbank, ohne Rad</translation>
    </message>
    <message>
        <source>bind</source>
        <translation>belegen</translation>
    </message>
    <message>
        <source>bind a key of your own to what is chosen</source>
        <translation>die Auswahl mit einer eigenen Taste belegen</translation>
    </message>
    <message>
        <source>both runs over each other: voltage above, current below</source>
        <translation>beide Läufe übereinander: oben Spannung, unten Strom</translation>
    </message>
    <message>
        <source>by</source>
        <translation>von</translation>
    </message>
    <message>
        <source>by step, by time</source>
        <translation>nach Stufen, nach Zeit</translation>
    </message>
    <message>
        <source>by {by}</source>
        <translation>von {by}</translation>
    </message>
    <message>
        <source>cabin filter</source>
        <translation>Innenraumfilter</translation>
    </message>
    <message>
        <source>calibration of meters that are known</source>
        <translation>Kalibrierung der bekannten Messgeräte</translation>
    </message>
    <message>
        <source>can&apos;t be bound: the window could not be worked without it.</source>
        <translation>kann nicht belegt werden: ohne sie ließe sich das Fenster nicht bedienen.</translation>
    </message>
    <message>
        <source>can&apos;t be copied: {why}.</source>
        <translation>kann nicht kopiert werden: {why}.</translation>
    </message>
    <message>
        <source>can&apos;t be read: {why}.</source>
        <translation>kann nicht gelesen werden: {why}.</translation>
    </message>
    <message>
        <source>can&apos;t be written: {why}.</source>
        <translation>kann nicht geschrieben werden: {why}.</translation>
    </message>
    <message>
        <source>can&apos;t reach</source>
        <translation>unzugänglich</translation>
    </message>
    <message>
        <source>can&apos;t tell</source>
        <translation>nicht zu sagen</translation>
    </message>
    <message>
        <source>cancel</source>
        <translation>abbrechen</translation>
    </message>
    <message>
        <source>cancel: {words}</source>
        <translation>abbrechen: {words}</translation>
    </message>
    <message>
        <source>cause</source>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>cautions</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>channel of the probe that goes about</source>
        <translation>Kanal der Messspitze, die umhergeht</translation>
    </message>
    <message>
        <source>channel {name} is the other way round</source>
        <translation>Kanal {name} ist andersherum</translation>
    </message>
    <message>
        <source>check a pack</source>
        <translation>Paket prüfen</translation>
    </message>
    <message>
        <source>check a pack or a recording: choose its folder</source>
        <translation>Paket oder Aufzeichnung prüfen: Ordner wählen</translation>
    </message>
    <message>
        <source>check a pack: choose its zip or PDF</source>
        <translation>Paket prüfen: Zip oder PDF wählen</translation>
    </message>
    <message>
        <source>check plug, cable and power.</source>
        <translation>Stecker, Kabel und Strom prüfen.</translation>
    </message>
    <message>
        <source>check the pack that was made</source>
        <translation>das gemachte Paket prüfen</translation>
    </message>
    <message>
        <source>checking</source>
        <translation>Prüfung läuft</translation>
    </message>
    <message>
        <source>checking {name}…</source>
        <translation>{name} wird geprüft…</translation>
    </message>
    <message>
        <source>choose a port, or type an address</source>
        <translation>Anschluss wählen oder Adresse tippen</translation>
    </message>
    <message>
        <source>choose all</source>
        <translation>alle wählen</translation>
    </message>
    <message>
        <source>choose another folder: {name}</source>
        <translation>anderen Ordner wählen: {name}</translation>
    </message>
    <message>
        <source>choose pictures for the job</source>
        <translation>Bilder für den Auftrag wählen</translation>
    </message>
    <message>
        <source>choose the circuit…</source>
        <translation>Stromlauf wählen…</translation>
    </message>
    <message>
        <source>choose the folder of a circuit check</source>
        <translation>Ordner einer Stromlaufprüfung wählen</translation>
    </message>
    <message>
        <source>choose the folder of the recording after</source>
        <translation>Ordner der Aufzeichnung nachher wählen</translation>
    </message>
    <message>
        <source>choose the folder of the recording before</source>
        <translation>Ordner der Aufzeichnung vorher wählen</translation>
    </message>
    <message>
        <source>choose where the pack goes</source>
        <translation>wählen, wohin das Paket geht</translation>
    </message>
    <message>
        <source>circuit</source>
        <translation>Stromlauf</translation>
    </message>
    <message>
        <source>circuit check</source>
        <translation>Stromlaufprüfung</translation>
    </message>
    <message>
        <source>circuit checks</source>
        <translation>Stromlaufprüfungen</translation>
    </message>
    <message>
        <source>claim</source>
        <translation>Antrag</translation>
    </message>
    <message>
        <source>claim number</source>
        <translation>Antragsnummer</translation>
    </message>
    <message>
        <source>claim-1 in the job&apos;s folder</source>
        <translation>claim-1 im Ordner des Auftrags</translation>
    </message>
    <message>
        <source>clamp</source>
        <translation>Zange</translation>
    </message>
    <message>
        <source>clear the search</source>
        <translation>Suche leeren</translation>
    </message>
    <message>
        <source>click</source>
        <translation>Klicken</translation>
    </message>
    <message>
        <source>clogged</source>
        <comment>condition</comment>
        <translation>verstopft</translation>
    </message>
    <message>
        <source>closed</source>
        <comment>condition</comment>
        <translation>zu</translation>
    </message>
    <message>
        <source>closer</source>
        <translation>näher</translation>
    </message>
    <message>
        <source>command</source>
        <translation>Ansteuerung</translation>
    </message>
    <message>
        <source>command lost</source>
        <translation>Ansteuerung weg</translation>
    </message>
    <message>
        <source>commutator bars</source>
        <translation>Kommutatorlamellen</translation>
    </message>
    <message>
        <source>compare</source>
        <translation>vergleichen</translation>
    </message>
    <message>
        <source>compare again</source>
        <translation>neu vergleichen</translation>
    </message>
    <message>
        <source>complaint</source>
        <translation>Beanstandung</translation>
    </message>
    <message>
        <source>complaint now?</source>
        <translation>Fehler jetzt da?</translation>
    </message>
    <message>
        <source>complaint, in the customer&apos;s words</source>
        <translation>Beanstandung in Worten des Kunden</translation>
    </message>
    <message>
        <source>conditions that differ from the first run&apos;s</source>
        <translation>Bedingungen, die vom ersten Lauf abweichen</translation>
    </message>
    <message>
        <source>conditions that nobody stated</source>
        <translation>Bedingungen, die niemand angegeben hat</translation>
    </message>
    <message>
        <source>connect and record</source>
        <translation>verbinden und aufzeichnen</translation>
    </message>
    <message>
        <source>connected</source>
        <translation>verbunden</translation>
    </message>
    <message>
        <source>connecting…</source>
        <translation>verbindet…</translation>
    </message>
    <message>
        <source>continue the job of the last time</source>
        <translation>den letzten Auftrag weiterführen</translation>
    </message>
    <message>
        <source>control of the fan</source>
        <translation>Bedienung des Gebläses</translation>
    </message>
    <message>
        <source>controller ground</source>
        <translation>Masse des Reglers</translation>
    </message>
    <message>
        <source>controller heat</source>
        <translation>Wärme im Regler</translation>
    </message>
    <message>
        <source>copy the comparison as text</source>
        <translation>den Vergleich als Text kopieren</translation>
    </message>
    <message>
        <source>copy the figures of the measured stretch</source>
        <translation>die Werte des gemessenen Abschnitts kopieren</translation>
    </message>
    <message>
        <source>correction</source>
        <translation>Abhilfe</translation>
    </message>
    <message>
        <source>current</source>
        <translation>Strom</translation>
    </message>
    <message>
        <source>current (A)</source>
        <translation>Strom (A)</translation>
    </message>
    <message>
        <source>current at the next speed</source>
        <translation>Strom bei der nächsten Stufe</translation>
    </message>
    <message>
        <source>customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>date not known</source>
        <translation>Datum nicht bekannt</translation>
    </message>
    <message>
        <source>date, odometer</source>
        <translation>Datum, Kilometerstand</translation>
    </message>
    <message>
        <source>day, full, keys</source>
        <translation>hell, voll, Tasten</translation>
    </message>
    <message>
        <source>dead</source>
        <translation>tot</translation>
    </message>
    <message>
        <source>dead</source>
        <comment>sign</comment>
        <translation>steht</translation>
    </message>
    <message>
        <source>defrost</source>
        <comment>condition</comment>
        <translation>Scheibe</translation>
    </message>
    <message>
        <source>device</source>
        <translation>Gerät</translation>
    </message>
    <message>
        <source>difference at each speed</source>
        <translation>Unterschied bei jeder Stufe</translation>
    </message>
    <message>
        <source>differs</source>
        <translation>verschieden</translation>
    </message>
    <message>
        <source>dip</source>
        <translation>Einbruch</translation>
    </message>
    <message>
        <source>direct</source>
        <translation>direkt</translation>
    </message>
    <message>
        <source>disk {free} GB free</source>
        <translation>{free} GB frei</translation>
    </message>
    <message>
        <source>disk {free} MB free</source>
        <translation>{free} MB frei</translation>
    </message>
    <message>
        <source>disk: not known</source>
        <translation>Platz: nicht bekannt</translation>
    </message>
    <message>
        <source>divider</source>
        <translation>Teiler</translation>
    </message>
    <message>
        <source>drag</source>
        <translation>Schwergang</translation>
    </message>
    <message>
        <source>drawing of the circuit {title}: {found}</source>
        <translation>Zeichnung des Stromlaufs {title}: {found}</translation>
    </message>
    <message>
        <source>drawing of the circuit: none chosen</source>
        <translation>Zeichnung des Stromlaufs: keiner gewählt</translation>
    </message>
    <message>
        <source>drop</source>
        <translation>verwerfen</translation>
    </message>
    <message>
        <source>drop the edit that is not written</source>
        <translation>den ungeschriebenen Nachtrag verwerfen</translation>
    </message>
    <message>
        <source>dropout not seen</source>
        <translation>Aussetzer nicht gesehen</translation>
    </message>
    <message>
        <source>earlier</source>
        <translation>früher</translation>
    </message>
    <message>
        <source>earlier, later</source>
        <translation>früher, später</translation>
    </message>
    <message>
        <source>edits</source>
        <translation>Nachträge</translation>
    </message>
    <message>
        <source>edits on top</source>
        <translation>Nachträge</translation>
    </message>
    <message>
        <source>edits on top of the recording</source>
        <translation>Nachträge zur Aufzeichnung</translation>
    </message>
    <message>
        <source>end</source>
        <translation>Ende</translation>
    </message>
    <message>
        <source>engine</source>
        <translation>Fahrzeugmotor</translation>
    </message>
    <message>
        <source>engine running</source>
        <translation>Fahrzeugmotor läuft</translation>
    </message>
    <message>
        <source>entries of the check, newest first</source>
        <translation>Einträge der Prüfung, neueste zuerst</translation>
    </message>
    <message>
        <source>entry {id}, {point}: {entry} {unit}</source>
        <translation>Eintrag {id}, {point}: {entry} {unit}</translation>
    </message>
    <message>
        <source>entry {id}, {sign}: {entry}</source>
        <translation>Eintrag {id}, {sign}: {entry}</translation>
    </message>
    <message>
        <source>exchange before and after</source>
        <translation>vorher und nachher tauschen</translation>
    </message>
    <message>
        <source>face</source>
        <comment>condition</comment>
        <translation>Gesicht</translation>
    </message>
    <message>
        <source>failed on</source>
        <translation>Ausfall am</translation>
    </message>
    <message>
        <source>fan</source>
        <translation>Gebläse</translation>
    </message>
    <message>
        <source>fan housing</source>
        <translation>Gebläsegehäuse</translation>
    </message>
    <message>
        <source>fan ran before</source>
        <translation>Gebläse lief vorher</translation>
    </message>
    <message>
        <source>fault</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>fault codes</source>
        <translation>Fehlercodes</translation>
    </message>
    <message>
        <source>fault found</source>
        <translation>Fehler gefunden</translation>
    </message>
    <message>
        <source>feed lost</source>
        <translation>Plus weg</translation>
    </message>
    <message>
        <source>feed resistance</source>
        <translation>Widerstand Plus</translation>
    </message>
    <message>
        <source>figures of each speed step</source>
        <translation>Werte jeder Stufe</translation>
    </message>
    <message>
        <source>figures of the measured stretch</source>
        <translation>Werte des gemessenen Abschnitts</translation>
    </message>
    <message>
        <source>files of the pack</source>
        <translation>Dateien des Pakets</translation>
    </message>
    <message>
        <source>fill empty fields from the template</source>
        <translation>leere Felder aus der Vorlage füllen</translation>
    </message>
    <message>
        <source>filled in from {name}</source>
        <translation>ausgefüllt aus {name}</translation>
    </message>
    <message>
        <source>filter</source>
        <translation>Filter</translation>
    </message>
    <message>
        <source>find</source>
        <translation>suchen</translation>
    </message>
    <message>
        <source>findings</source>
        <translation>Befunde</translation>
    </message>
    <message>
        <source>fingerprint of its maker&apos;s key, if told by another way</source>
        <translation>Fingerabdruck des Schlüssels seines Urhebers, falls auf anderem Weg mitgeteilt</translation>
    </message>
    <message>
        <source>fingerprint of the key that must have signed</source>
        <translation>Fingerabdruck des Schlüssels, der unterschrieben haben muss</translation>
    </message>
    <message>
        <source>fitted by</source>
        <translation>eingebaut von</translation>
    </message>
    <message>
        <source>flap</source>
        <translation>Klappe</translation>
    </message>
    <message>
        <source>floor</source>
        <comment>condition</comment>
        <translation>Fußraum</translation>
    </message>
    <message>
        <source>folder</source>
        <translation>Ordner</translation>
    </message>
    <message>
        <source>folder for recordings</source>
        <translation>Ordner für Aufzeichnungen</translation>
    </message>
    <message>
        <source>folder of the pack</source>
        <translation>Ordner des Pakets</translation>
    </message>
    <message>
        <source>folders to look into</source>
        <translation>Ordner, in denen gesucht wird</translation>
    </message>
    <message>
        <source>follow</source>
        <translation>folgen</translation>
    </message>
    <message>
        <source>for</source>
        <translation>seit</translation>
    </message>
    <message>
        <source>forbids</source>
        <translation>schließt aus</translation>
    </message>
    <message>
        <source>found speeds: take, undo</source>
        <translation>gefundene Stufen: nehmen, zurück</translation>
    </message>
    <message>
        <source>found steps</source>
        <translation>gefundene Stufen</translation>
    </message>
    <message>
        <source>free</source>
        <translation>lösen</translation>
    </message>
    <message>
        <source>free</source>
        <comment>sign</comment>
        <translation>frei</translation>
    </message>
    <message>
        <source>fresh</source>
        <comment>condition</comment>
        <translation>frisch</translation>
    </message>
    <message>
        <source>from</source>
        <translation>von</translation>
    </message>
    <message>
        <source>from date</source>
        <translation>von Datum</translation>
    </message>
    <message>
        <source>full</source>
        <comment>sign</comment>
        <translation>voll</translation>
    </message>
    <message>
        <source>fuse</source>
        <translation>Sicherung</translation>
    </message>
    <message>
        <source>fuse load</source>
        <translation>Last der Sicherung</translation>
    </message>
    <message>
        <source>fuse opening</source>
        <translation>Auslösen der Sicherung</translation>
    </message>
    <message>
        <source>fuse out</source>
        <translation>Sicherung raus</translation>
    </message>
    <message>
        <source>go to next</source>
        <translation>zum nächsten</translation>
    </message>
    <message>
        <source>good</source>
        <translation>gut</translation>
    </message>
    <message>
        <source>good A</source>
        <translation>gut A</translation>
    </message>
    <message>
        <source>ground lost</source>
        <translation>Masse weg</translation>
    </message>
    <message>
        <source>ground resistance</source>
        <translation>Widerstand Masse</translation>
    </message>
    <message>
        <source>guide</source>
        <translation>Führung</translation>
    </message>
    <message>
        <source>has keys that say which one; another key could not.</source>
        <translation>hat Tasten, die sagen, welche; eine andere könnte das nicht.</translation>
    </message>
    <message>
        <source>has more than one sign between its digits.</source>
        <translation>hat mehr als ein Zeichen zwischen den Ziffern.</translation>
    </message>
    <message>
        <source>has no port.</source>
        <translation>hat keinen Anschluss.</translation>
    </message>
    <message>
        <source>heard</source>
        <comment>sign</comment>
        <translation>gehört</translation>
    </message>
    <message>
        <source>holds no job: there is no {card}.</source>
        <translation>enthält keinen Auftrag: es gibt kein {card}.</translation>
    </message>
    <message>
        <source>holds no recording</source>
        <translation>enthält keine Aufzeichnung</translation>
    </message>
    <message>
        <source>holds several recordings; choose one of them</source>
        <translation>enthält mehrere Aufzeichnungen; eine davon wählen</translation>
    </message>
    <message>
        <source>hours</source>
        <translation>Betriebsstunden</translation>
    </message>
    <message>
        <source>how far the asking is</source>
        <translation>wie weit das Fragen ist</translation>
    </message>
    <message>
        <source>how many were found</source>
        <translation>wie viele gefunden wurden</translation>
    </message>
    <message>
        <source>how much the job card does not say</source>
        <translation>wie viel die Auftragskarte nicht sagt</translation>
    </message>
    <message>
        <source>how often the wire goes through the clamp</source>
        <translation>wie oft die Leitung durch die Zange geht</translation>
    </message>
    <message>
        <source>in</source>
        <translation>in</translation>
    </message>
    <message>
        <source>in order</source>
        <translation>in Ordnung</translation>
    </message>
    <message>
        <source>in service since</source>
        <translation>im Verkehr seit</translation>
    </message>
    <message>
        <source>in the customer&apos;s own words</source>
        <translation>in Worten des Kunden</translation>
    </message>
    <message>
        <source>inverted</source>
        <translation>verdreht</translation>
    </message>
    <message>
        <source>is empty.</source>
        <translation>ist leer.</translation>
    </message>
    <message>
        <source>is larger than {most_bytes} MB, which no claim takes.</source>
        <translation>ist größer als {most_bytes} MB, das nimmt kein Antrag an.</translation>
    </message>
    <message>
        <source>is no file.</source>
        <translation>ist keine Datei.</translation>
    </message>
    <message>
        <source>is no number.</source>
        <translation>ist keine Zahl.</translation>
    </message>
    <message>
        <source>is no reading.</source>
        <translation>ist kein Messwert.</translation>
    </message>
    <message>
        <source>is not in {unit}.</source>
        <translation>ist nicht in {unit}.</translation>
    </message>
    <message>
        <source>is the computer kept awake</source>
        <translation>wird der Rechner wach gehalten</translation>
    </message>
    <message>
        <source>it broke off (code {code})</source>
        <translation>es brach ab (Code {code})</translation>
    </message>
    <message>
        <source>it did not start: {error}</source>
        <translation>es startete nicht: {error}</translation>
    </message>
    <message>
        <source>it is no file</source>
        <translation>keine Datei</translation>
    </message>
    <message>
        <source>its own ±({percent} % + {floor} {unit})</source>
        <translation>eigener Fehler ±({percent} % + {floor} {unit})</translation>
    </message>
    <message>
        <source>job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>job at hand, and which part is in</source>
        <translation>Auftrag und welches Teil eingebaut ist</translation>
    </message>
    <message>
        <source>jobs</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>judge the {many} without a verdict</source>
        <translation>die {many} ohne Urteil beurteilen</translation>
    </message>
    <message>
        <source>judging: findings come when all has been read</source>
        <translation>wird beurteilt: Befunde kommen, wenn alles gelesen ist</translation>
    </message>
    <message>
        <source>judging…</source>
        <translation>beurteilt…</translation>
    </message>
    <message>
        <source>jumper</source>
        <translation>Brücke</translation>
    </message>
    <message>
        <source>jumper from, to</source>
        <translation>Brücke von, nach</translation>
    </message>
    <message>
        <source>keep what repeats on this card as a template</source>
        <translation>behalten, was sich auf dieser Karte wiederholt, als Vorlage</translation>
    </message>
    <message>
        <source>kept zero {offset} {unit}, {age} old</source>
        <translation>behaltener Nullpunkt {offset} {unit}, {age} alt</translation>
    </message>
    <message>
        <source>key</source>
        <translation>Zündung</translation>
    </message>
    <message>
        <source>key {key}</source>
        <translation>Zündung {key}</translation>
    </message>
    <message>
        <source>keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>keys: {names}</source>
        <translation>Tasten: {names}</translation>
    </message>
    <message>
        <source>kind of meter</source>
        <translation>Art des Messgeräts</translation>
    </message>
    <message>
        <source>labour</source>
        <translation>Arbeitszeit</translation>
    </message>
    <message>
        <source>largest difference allowed, percent; empty: none is set</source>
        <translation>größter erlaubter Unterschied, Prozent; leer: keiner gesetzt</translation>
    </message>
    <message>
        <source>last reading</source>
        <translation>letzter Messwert</translation>
    </message>
    <message>
        <source>last reading, typed by hand</source>
        <translation>letzter Messwert, von Hand eingetippt</translation>
    </message>
    <message>
        <source>later</source>
        <translation>später</translation>
    </message>
    <message>
        <source>lay speed over speed</source>
        <translation>Stufe über Stufe legen</translation>
    </message>
    <message>
        <source>lay the whole runs over each other, from the first command on</source>
        <translation>die ganzen Läufe übereinander legen, ab der ersten Schaltung</translation>
    </message>
    <message>
        <source>leads moved</source>
        <translation>Leitungen bewegt</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>likely</source>
        <translation>wahrscheinlich</translation>
    </message>
    <message>
        <source>limit</source>
        <translation>Grenzwert</translation>
    </message>
    <message>
        <source>Choose what a foot pedal, a ring or a spare key shall do, press Bind, then press it. The keys that are always there stay; a key of your own goes before them. A page that needs a key itself takes it: see the key map at the bottom.</source>
        <translation>Wählen, was ein Fußtaster, ein Ring oder eine freie Taste tun soll, Belegen drücken, dann sie drücken. Die Tasten, die es immer gibt, bleiben; eine eigene geht ihnen vor. Braucht eine Seite eine Taste selbst, nimmt sie sie: siehe die Tasten unten.</translation>
    </message>
    <message>
        <source>Ctrl+1…7</source>
        <translation>Strg+1…7</translation>
    </message>
    <message>
        <source>Ctrl+M</source>
        <translation>Strg+M</translation>
    </message>
    <message>
        <source>Esc ends</source>
        <translation>Esc beendet</translation>
    </message>
    <message>
        <source>It is being recorded: stop the recording first.</source>
        <translation>Sie läuft noch: erst die Aufzeichnung beenden.</translation>
    </message>
    <message>
        <source>Stop the recording first, then make the pack.</source>
        <translation>Erst die Aufzeichnung beenden, dann das Paket machen.</translation>
    </message>
    <message>
        <source>Stop the recording first: this run is filed with the new part.</source>
        <translation>Erst die Aufzeichnung stoppen: dieser Lauf ist beim neuen Teil abgelegt.</translation>
    </message>
    <message>
        <source>Stop the recording first: this run is filed with the old part.</source>
        <translation>Erst die Aufzeichnung stoppen: dieser Lauf ist beim alten Teil abgelegt.</translation>
    </message>
    <message>
        <source>You may not write in {there}. Choose another folder.</source>
        <translation>In {there} darf nicht geschrieben werden. Einen anderen Ordner wählen.</translation>
    </message>
    <message>
        <source>all but Circuit</source>
        <translation>alle außer Stromlauf</translation>
    </message>
    <message>
        <source>all pages</source>
        <translation>alle Seiten</translation>
    </message>
    <message>
        <source>answer to a command within</source>
        <translation>Antwort auf einen Befehl innerhalb von</translation>
    </message>
    <message>
        <source>current limits hold at the reference voltage</source>
        <translation>Stromgrenzen gelten bei Bezugsspannung</translation>
    </message>
    <message>
        <source>guard band, part of U</source>
        <translation>Schutzabstand, Teil von U</translation>
    </message>
    <message>
        <source>highest current at speed {speed}</source>
        <translation>höchster Strom bei Stufe {speed}</translation>
    </message>
    <message>
        <source>highest heat in the controller</source>
        <translation>höchste Wärme im Regler</translation>
    </message>
    <message>
        <source>highest load of the fuse</source>
        <translation>höchste Last der Sicherung</translation>
    </message>
    <message>
        <source>highest voltage drop of the feed</source>
        <translation>höchster Spannungsfall auf der Plusseite</translation>
    </message>
    <message>
        <source>highest voltage drop of the ground</source>
        <translation>höchster Spannungsfall auf der Masseseite</translation>
    </message>
    <message>
        <source>kind of controller</source>
        <translation>Art des Reglers</translation>
    </message>
    <message>
        <source>kind of fuse</source>
        <translation>Art der Sicherung</translation>
    </message>
    <message>
        <source>limits</source>
        <translation>Grenzwerte</translation>
    </message>
    <message>
        <source>limits by which the current is judged</source>
        <translation>Grenzwerte, nach denen der Strom beurteilt wird</translation>
    </message>
    <message>
        <source>link</source>
        <translation>Verbindung</translation>
    </message>
    <message>
        <source>live value</source>
        <translation>laufender Wert</translation>
    </message>
    <message>
        <source>locked</source>
        <translation>blockiert</translation>
    </message>
    <message>
        <source>look at all of it</source>
        <translation>alles ansehen</translation>
    </message>
    <message>
        <source>look for ports again</source>
        <translation>Anschlüsse neu suchen</translation>
    </message>
    <message>
        <source>look into another folder too, such as a share or a stick</source>
        <translation>auch in einem anderen Ordner suchen, etwa auf einem Stick</translation>
    </message>
    <message>
        <source>look into this folder no more; nothing in it is touched</source>
        <translation>in diesem Ordner nicht mehr suchen; darin wird nichts verändert</translation>
    </message>
    <message>
        <source>looking back: F follows</source>
        <translation>Rückblick: F folgt</translation>
    </message>
    <message>
        <source>looks</source>
        <translation>Aussehen</translation>
    </message>
    <message>
        <source>louder</source>
        <translation>lauter</translation>
    </message>
    <message>
        <source>lowest current at speed {speed}</source>
        <translation>kleinster Strom bei Stufe {speed}</translation>
    </message>
    <message>
        <source>maintenance before</source>
        <translation>frühere Wartung</translation>
    </message>
    <message>
        <source>make the claim pack</source>
        <translation>Antragspaket machen</translation>
    </message>
    <message>
        <source>make the pack</source>
        <translation>Paket machen</translation>
    </message>
    <message>
        <source>make, model, year</source>
        <translation>Marke, Modell, Baujahr</translation>
    </message>
    <message>
        <source>manual</source>
        <comment>condition</comment>
        <translation>von Hand</translation>
    </message>
    <message>
        <source>mark</source>
        <translation>Marke</translation>
    </message>
    <message>
        <source>marks</source>
        <translation>Marken</translation>
    </message>
    <message>
        <source>max A</source>
        <translation>max. A</translation>
    </message>
    <message>
        <source>may be asked</source>
        <translation>darf gefragt werden</translation>
    </message>
    <message>
        <source>mean {mean}</source>
        <translation>Mittel {mean}</translation>
    </message>
    <message>
        <source>measure</source>
        <translation>messen</translation>
    </message>
    <message>
        <source>measure a stretch</source>
        <translation>Abschnitt messen</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>measured by</source>
        <translation>gemessen von</translation>
    </message>
    <message>
        <source>median {median}</source>
        <translation>Median {median}</translation>
    </message>
    <message>
        <source>message</source>
        <translation>Meldung</translation>
    </message>
    <message>
        <source>message about the claim</source>
        <translation>Meldung zum Antrag</translation>
    </message>
    <message>
        <source>message about the job</source>
        <translation>Meldung zum Auftrag</translation>
    </message>
    <message>
        <source>meter that is typed by hand</source>
        <translation>Messgerät, das von Hand eingetippt wird</translation>
    </message>
    <message>
        <source>meters</source>
        <translation>Messgeräte</translation>
    </message>
    <message>
        <source>min:s</source>
        <translation>min:s</translation>
    </message>
    <message>
        <source>missing for a claim, most asked for first</source>
        <translation>für den Antrag Fehlendes, Meistgefragtes zuerst</translation>
    </message>
    <message>
        <source>mixed</source>
        <comment>condition</comment>
        <translation>gemischt</translation>
    </message>
    <message>
        <source>motor current</source>
        <translation>Motorstrom</translation>
    </message>
    <message>
        <source>motor current over dates: {words} {marks}</source>
        <translation>Motorstrom über dem Datum: {words} {marks}</translation>
    </message>
    <message>
        <source>motor feed</source>
        <translation>Motor Plus</translation>
    </message>
    <message>
        <source>motor is driven from</source>
        <translation>Motor gilt als angetrieben ab</translation>
    </message>
    <message>
        <source>motor is in</source>
        <translation>Motor ist</translation>
    </message>
    <message>
        <source>motor return</source>
        <translation>Motor Minus</translation>
    </message>
    <message>
        <source>motor voltage (V)</source>
        <translation>Motorspannung (V)</translation>
    </message>
    <message>
        <source>move</source>
        <translation>schieben</translation>
    </message>
    <message>
        <source>moved</source>
        <translation>bewegt</translation>
    </message>
    <message>
        <source>name for a new template</source>
        <translation>Name für eine neue Vorlage</translation>
    </message>
    <message>
        <source>name, contact</source>
        <translation>Name, Ansprechpartner</translation>
    </message>
    <message>
        <source>new</source>
        <translation>neu</translation>
    </message>
    <message>
        <source>new</source>
        <comment>condition</comment>
        <translation>neu</translation>
    </message>
    <message>
        <source>new A</source>
        <translation>neu A</translation>
    </message>
    <message>
        <source>new job</source>
        <translation>neuer Auftrag</translation>
    </message>
    <message>
        <source>new name</source>
        <translation>neuer Name</translation>
    </message>
    <message>
        <source>new part</source>
        <translation>neues Teil</translation>
    </message>
    <message>
        <source>new part&apos;s invoice</source>
        <translation>Rechnung des neuen Teils</translation>
    </message>
    <message>
        <source>new part, date code</source>
        <translation>neues Teil, Datumscode</translation>
    </message>
    <message>
        <source>new part, name</source>
        <translation>neues Teil, Bezeichnung</translation>
    </message>
    <message>
        <source>new part, part number</source>
        <translation>neues Teil, Teilenummer</translation>
    </message>
    <message>
        <source>new part, serial number</source>
        <translation>neues Teil, Seriennummer</translation>
    </message>
    <message>
        <source>new − old A</source>
        <translation>neu − alt A</translation>
    </message>
    <message>
        <source>new, used, clogged, none</source>
        <translation>neu, gebraucht, verstopft, keiner</translation>
    </message>
    <message>
        <source>next</source>
        <translation>als Nächstes</translation>
    </message>
    <message>
        <source>next after</source>
        <translation>nächste nachher</translation>
    </message>
    <message>
        <source>next before</source>
        <translation>nächste vorher</translation>
    </message>
    <message>
        <source>next colours: day, dark footwell, high contrast</source>
        <translation>nächste Farben: Tag, dunkler Fußraum, hoher Kontrast</translation>
    </message>
    <message>
        <source>next sentence of the guide</source>
        <translation>nächster Satz der Führung</translation>
    </message>
    <message>
        <source>next speed</source>
        <translation>nächste Stufe</translation>
    </message>
    <message>
        <source>next step</source>
        <translation>nächste Stufe</translation>
    </message>
    <message>
        <source>next test</source>
        <translation>nächste Messung</translation>
    </message>
    <message>
        <source>next test point</source>
        <translation>nächster Messpunkt</translation>
    </message>
    <message>
        <source>next that is missing</source>
        <translation>nächstes Fehlendes</translation>
    </message>
    <message>
        <source>next to no current below</source>
        <translation>fast kein Strom unter</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>no current</source>
        <translation>kein Strom</translation>
    </message>
    <message>
        <source>no current while slowing down, up to</source>
        <translation>kein Strom beim Langsamerwerden bis</translation>
    </message>
    <message>
        <source>no data</source>
        <translation>keine Daten</translation>
    </message>
    <message>
        <source>no data {turned}</source>
        <translation>keine Daten {turned}</translation>
    </message>
    <message>
        <source>no date</source>
        <translation>ohne Datum</translation>
    </message>
    <message>
        <source>no job yet: fill in its card on the Job page</source>
        <translation>noch kein Auftrag: seine Karte auf der Seite Auftrag ausfüllen</translation>
    </message>
    <message>
        <source>no jumper goes there.</source>
        <translation>dort geht keine Brücke hin.</translation>
    </message>
    <message>
        <source>no meter</source>
        <translation>kein Messgerät</translation>
    </message>
    <message>
        <source>no plug: typed by hand</source>
        <translation>ohne Stecker: von Hand eingetippt</translation>
    </message>
    <message>
        <source>no point</source>
        <translation>kein Messpunkt</translation>
    </message>
    <message>
        <source>no reading</source>
        <translation>kein Messwert</translation>
    </message>
    <message>
        <source>no small picture of it can be shown</source>
        <translation>kein kleines Bild davon möglich</translation>
    </message>
    <message>
        <source>no sound</source>
        <translation>kein Ton</translation>
    </message>
    <message>
        <source>no sound: the computer has no device for it; plug one in and press V</source>
        <translation>kein Ton: der Rechner hat kein Gerät dafür; eines einstecken und V drücken</translation>
    </message>
    <message>
        <source>no sound: the device can&apos;t be opened; is another program using it?</source>
        <translation>kein Ton: das Gerät lässt sich nicht öffnen; nutzt es ein anderes Programm?</translation>
    </message>
    <message>
        <source>no sound: the device takes no 48 kHz mono; choose another, press V</source>
        <translation>kein Ton: das Gerät kann nicht 48 kHz mono; ein anderes wählen, V drücken</translation>
    </message>
    <message>
        <source>no sound: {error}; install Qt&apos;s multimedia part with &quot;pip install meterlog[sound]&quot;, on Linux also the system&apos;s libpulse0</source>
        <translation>kein Ton: {error}; Qts Multimedia-Teil einrichten mit &quot;pip install meterlog[sound]&quot;, unter Linux auch libpulse0 des Systems</translation>
    </message>
    <message>
        <source>no voltage</source>
        <translation>keine Spannung</translation>
    </message>
    <message>
        <source>nominal voltage</source>
        <translation>Nennspannung</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>none</source>
        <comment>condition</comment>
        <translation>keiner</translation>
    </message>
    <message>
        <source>none</source>
        <comment>sign</comment>
        <translation>keiner</translation>
    </message>
    <message>
        <source>none chosen</source>
        <translation>keine gewählt</translation>
    </message>
    <message>
        <source>none known</source>
        <translation>keine bekannt</translation>
    </message>
    <message>
        <source>none yet</source>
        <translation>noch keine</translation>
    </message>
    <message>
        <source>not judged</source>
        <translation>nicht beurteilt</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>not recording</source>
        <translation>keine Aufzeichnung</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>nicht gesagt</translation>
    </message>
    <message>
        <source>not sealed</source>
        <translation>nicht versiegelt</translation>
    </message>
    <message>
        <source>not stated</source>
        <translation>nicht angegeben</translation>
    </message>
    <message>
        <source>not there now</source>
        <translation>jetzt nicht da</translation>
    </message>
    <message>
        <source>not to be asked</source>
        <translation>nicht fragen</translation>
    </message>
    <message>
        <source>note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>notes</source>
        <translation>Bemerkungen</translation>
    </message>
    <message>
        <source>notes on the check</source>
        <translation>Hinweise zur Prüfung</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>nothing</source>
        <comment>sign</comment>
        <translation>nichts</translation>
    </message>
    <message>
        <source>nothing measured in this state</source>
        <translation>in diesem Zustand nichts gemessen</translation>
    </message>
    <message>
        <source>number, date</source>
        <translation>Nummer, Datum</translation>
    </message>
    <message>
        <source>odometer in</source>
        <translation>Kilometerstand Annahme</translation>
    </message>
    <message>
        <source>odometer out</source>
        <translation>Kilometerstand Abgabe</translation>
    </message>
    <message>
        <source>off</source>
        <translation>aus</translation>
    </message>
    <message>
        <source>off</source>
        <comment>condition</comment>
        <translation>aus</translation>
    </message>
    <message>
        <source>old</source>
        <translation>alt</translation>
    </message>
    <message>
        <source>old A</source>
        <translation>alt A</translation>
    </message>
    <message>
        <source>old or new part in the vehicle</source>
        <translation>altes oder neues Teil im Fahrzeug</translation>
    </message>
    <message>
        <source>old part</source>
        <translation>altes Teil</translation>
    </message>
    <message>
        <source>old part fitted on, at</source>
        <translation>altes Teil eingebaut am, bei</translation>
    </message>
    <message>
        <source>old part kept at</source>
        <translation>altes Teil aufbewahrt bei</translation>
    </message>
    <message>
        <source>old part, date code</source>
        <translation>altes Teil, Datumscode</translation>
    </message>
    <message>
        <source>old part, name</source>
        <translation>altes Teil, Bezeichnung</translation>
    </message>
    <message>
        <source>old part, part number</source>
        <translation>altes Teil, Teilenummer</translation>
    </message>
    <message>
        <source>old part, serial number</source>
        <translation>altes Teil, Seriennummer</translation>
    </message>
    <message>
        <source>old, new part</source>
        <translation>altes, neues Teil</translation>
    </message>
    <message>
        <source>on</source>
        <translation>an</translation>
    </message>
    <message>
        <source>one beside the other: not all have a date of their own</source>
        <translation>nebeneinander: nicht alle haben ein eigenes Datum</translation>
    </message>
    <message>
        <source>one sample earlier</source>
        <translation>ein Messwert früher</translation>
    </message>
    <message>
        <source>one sample later</source>
        <translation>ein Messwert später</translation>
    </message>
    <message>
        <source>only of this kind</source>
        <translation>nur diese Art</translation>
    </message>
    <message>
        <source>only this verdict</source>
        <translation>nur dieses Urteil</translation>
    </message>
    <message>
        <source>open</source>
        <translation>öffnen</translation>
    </message>
    <message>
        <source>open</source>
        <comment>condition</comment>
        <translation>offen</translation>
    </message>
    <message>
        <source>open a job</source>
        <translation>Auftrag öffnen</translation>
    </message>
    <message>
        <source>open a job: choose its folder</source>
        <translation>Auftrag öffnen: seinen Ordner wählen</translation>
    </message>
    <message>
        <source>open a recording</source>
        <translation>eine Aufzeichnung öffnen</translation>
    </message>
    <message>
        <source>open a recording in another folder</source>
        <translation>eine Aufzeichnung in einem anderen Ordner öffnen</translation>
    </message>
    <message>
        <source>open its folder</source>
        <translation>Ordner öffnen</translation>
    </message>
    <message>
        <source>open the PDF of the pack</source>
        <translation>das PDF des Pakets öffnen</translation>
    </message>
    <message>
        <source>open the folder of the pack</source>
        <translation>den Ordner des Pakets öffnen</translation>
    </message>
    <message>
        <source>opening…</source>
        <translation>öffnet…</translation>
    </message>
    <message>
        <source>operation code, hours</source>
        <translation>Arbeitsposition, Stunden</translation>
    </message>
    <message>
        <source>or type (R): {number}</source>
        <translation>(R): {number}</translation>
    </message>
    <message>
        <source>or: none</source>
        <translation>oder: keine</translation>
    </message>
    <message>
        <source>origin of the readings</source>
        <translation>Herkunft der Messwerte</translation>
    </message>
    <message>
        <source>origin of the readings, {name}</source>
        <translation>Herkunft der Messwerte, {name}</translation>
    </message>
    <message>
        <source>other</source>
        <translation>anderes</translation>
    </message>
    <message>
        <source>other: only recorded</source>
        <translation>anderes: nur aufgezeichnet</translation>
    </message>
    <message>
        <source>other: {one_}</source>
        <translation>andere: {one_}</translation>
    </message>
    <message>
        <source>outcome of the check</source>
        <translation>Ergebnis der Prüfung</translation>
    </message>
    <message>
        <source>over 99 % </source>
        <translation>über 99 % </translation>
    </message>
    <message>
        <source>over limit</source>
        <translation>über Grenzwert</translation>
    </message>
    <message>
        <source>own accuracy of the sensor before channel {name}</source>
        <translation>eigene Genauigkeit des Aufnehmers vor Kanal {name}</translation>
    </message>
    <message>
        <source>own ±, e.g. {numbers}</source>
        <translation>eigene ±, z. B. {numbers}</translation>
    </message>
    <message>
        <source>page: choose the meters</source>
        <translation>Seite: die Messgeräte wählen</translation>
    </message>
    <message>
        <source>page: find a job or a recording</source>
        <translation>Seite: einen Auftrag oder eine Aufzeichnung finden</translation>
    </message>
    <message>
        <source>page: find the bad part</source>
        <translation>Seite: das defekte Teil finden</translation>
    </message>
    <message>
        <source>page: make the claim pack</source>
        <translation>Seite: das Antragspaket machen</translation>
    </message>
    <message>
        <source>page: measure and look</source>
        <translation>Seite: messen und ansehen</translation>
    </message>
    <message>
        <source>page: old part against new</source>
        <translation>Seite: altes Teil gegen neues</translation>
    </message>
    <message>
        <source>page: what the work order says</source>
        <translation>Seite: was im Auftrag steht</translation>
    </message>
    <message>
        <source>pages</source>
        <translation>Seiten</translation>
    </message>
    <message>
        <source>pair by order of current</source>
        <translation>nach Strom paaren</translation>
    </message>
    <message>
        <source>paper of the PDF: {it}</source>
        <translation>Papier des PDF: {it}</translation>
    </message>
    <message>
        <source>part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>part not stated</source>
        <translation>Teil nicht angegeben</translation>
    </message>
    <message>
        <source>passphrase of the signing key</source>
        <translation>Passwort des Unterschriftsschlüssels</translation>
    </message>
    <message>
        <source>photo {name} taken off</source>
        <translation>Foto {name} abgenommen</translation>
    </message>
    <message>
        <source>photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>photos of the job</source>
        <translation>Fotos des Auftrags</translation>
    </message>
    <message>
        <source>photos that are being copied</source>
        <translation>Fotos, die gerade kopiert werden</translation>
    </message>
    <message>
        <source>plate</source>
        <translation>Kennzeichen</translation>
    </message>
    <message>
        <source>plug</source>
        <translation>Stecker</translation>
    </message>
    <message>
        <source>plug off</source>
        <translation>Stecker ab</translation>
    </message>
    <message>
        <source>plug {plain} off</source>
        <translation>Stecker {plain} ab</translation>
    </message>
    <message>
        <source>point back</source>
        <translation>Messpunkt zurück</translation>
    </message>
    <message>
        <source>point on</source>
        <translation>Messpunkt weiter</translation>
    </message>
    <message>
        <source>port {device} may be asked</source>
        <translation>Anschluss {device} darf gefragt werden</translation>
    </message>
    <message>
        <source>port, or an address such as socket://host:port</source>
        <translation>Anschluss oder eine Adresse wie socket://host:port</translation>
    </message>
    <message>
        <source>possible</source>
        <translation>möglich</translation>
    </message>
    <message>
        <source>previous test point</source>
        <translation>voriger Messpunkt</translation>
    </message>
    <message>
        <source>probe</source>
        <translation>Messspitze</translation>
    </message>
    <message>
        <source>probe: by its role</source>
        <translation>Messspitze: nach Rolle</translation>
    </message>
    <message>
        <source>proposed point</source>
        <translation>vorgeschlagener Messpunkt</translation>
    </message>
    <message>
        <source>proven</source>
        <translation>bewiesen</translation>
    </message>
    <message>
        <source>pulsed</source>
        <translation>getaktet</translation>
    </message>
    <message>
        <source>put in again what was taken back</source>
        <translation>wieder einsetzen, was zurückgenommen wurde</translation>
    </message>
    <message>
        <source>put in the circuit check {folder}</source>
        <translation>die Stromlaufprüfung {folder} aufnehmen</translation>
    </message>
    <message>
        <source>range</source>
        <translation>Bereich</translation>
    </message>
    <message>
        <source>rating of the fuse</source>
        <translation>Nennstrom der Sicherung</translation>
    </message>
    <message>
        <source>read back</source>
        <translation>zurücklesen</translation>
    </message>
    <message>
        <source>read on</source>
        <translation>weiterlesen</translation>
    </message>
    <message>
        <source>reading typed at this test point</source>
        <translation>an diesem Messpunkt eingetippter Wert</translation>
    </message>
    <message>
        <source>reading typed by hand</source>
        <translation>von Hand eingetippter Wert</translation>
    </message>
    <message>
        <source>readings kept</source>
        <translation>gespeicherte Messwerte</translation>
    </message>
    <message>
        <source>readings to repeat</source>
        <translation>zu wiederholende Messungen</translation>
    </message>
    <message>
        <source>recirculated</source>
        <comment>condition</comment>
        <translation>Umluft</translation>
    </message>
    <message>
        <source>recording</source>
        <translation>Aufzeichnung</translation>
    </message>
    <message>
        <source>recording after</source>
        <translation>Aufzeichnung nachher</translation>
    </message>
    <message>
        <source>recording after the repair</source>
        <translation>Aufzeichnung nach der Reparatur</translation>
    </message>
    <message>
        <source>recording before</source>
        <translation>Aufzeichnung vorher</translation>
    </message>
    <message>
        <source>recording before the repair</source>
        <translation>Aufzeichnung vor der Reparatur</translation>
    </message>
    <message>
        <source>recording on show</source>
        <translation>gezeigte Aufzeichnung</translation>
    </message>
    <message>
        <source>recordings</source>
        <translation>Aufzeichnungen</translation>
    </message>
    <message>
        <source>recordings, newest first</source>
        <translation>Aufzeichnungen, neueste zuerst</translation>
    </message>
    <message>
        <source>recovered</source>
        <translation>wiederhergestellt</translation>
    </message>
    <message>
        <source>redo</source>
        <translation>wiederholen</translation>
    </message>
    <message>
        <source>redo what was undone</source>
        <translation>wiederholen, was zurückgenommen wurde</translation>
    </message>
    <message>
        <source>reference voltage</source>
        <translation>Bezugsspannung</translation>
    </message>
    <message>
        <source>refused</source>
        <translation>abgewiesen</translation>
    </message>
    <message>
        <source>relay coil</source>
        <translation>Relaisspule</translation>
    </message>
    <message>
        <source>relay out</source>
        <translation>Relaisausgang</translation>
    </message>
    <message>
        <source>remove this meter</source>
        <translation>dieses Messgerät entfernen</translation>
    </message>
    <message>
        <source>repaired on</source>
        <translation>repariert am</translation>
    </message>
    <message>
        <source>result</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>room on the disk</source>
        <translation>Platz auf dem Datenträger</translation>
    </message>
    <message>
        <source>rotor is held from</source>
        <translation>Läufer gilt als fest ab</translation>
    </message>
    <message>
        <source>rule of decision</source>
        <translation>Entscheidungsregel</translation>
    </message>
    <message>
        <source>running</source>
        <translation>läuft</translation>
    </message>
    <message>
        <source>running</source>
        <comment>condition</comment>
        <translation>läuft</translation>
    </message>
    <message>
        <source>runs</source>
        <comment>sign</comment>
        <translation>läuft</translation>
    </message>
    <message>
        <source>same</source>
        <translation>gleich</translation>
    </message>
    <message>
        <source>seal the recordings that were cut off</source>
        <translation>die abgebrochenen Aufzeichnungen versiegeln</translation>
    </message>
    <message>
        <source>seal what was cut off</source>
        <translation>Abgebrochenes versiegeln</translation>
    </message>
    <message>
        <source>seal {many} that were cut off, as recovered</source>
        <translation>{many} abgebrochene als wiederhergestellt versiegeln</translation>
    </message>
    <message>
        <source>sealed</source>
        <translation>versiegelt</translation>
    </message>
    <message>
        <source>sealing what was cut off…</source>
        <translation>versiegelt Abgebrochenes…</translation>
    </message>
    <message>
        <source>sealing…</source>
        <translation>versiegelt…</translation>
    </message>
    <message>
        <source>second run</source>
        <translation>zweiter Lauf</translation>
    </message>
    <message>
        <source>sensor before channel {name}; others may be typed</source>
        <translation>Aufnehmer vor Kanal {name}; andere lassen sich eintippen</translation>
    </message>
    <message>
        <source>serial {serial}</source>
        <translation>Seriennummer {serial}</translation>
    </message>
    <message>
        <source>set as proposed</source>
        <translation>wie vorgeschlagen</translation>
    </message>
    <message>
        <source>several good ones</source>
        <translation>mehrere gute</translation>
    </message>
    <message>
        <source>shortest condition told</source>
        <translation>kürzester gemeldeter Zustand</translation>
    </message>
    <message>
        <source>should be: {expected_words}</source>
        <translation>soll: {expected_words}</translation>
    </message>
    <message>
        <source>show or hide the cautions</source>
        <translation>die Vorsichtsregeln zeigen oder verbergen</translation>
    </message>
    <message>
        <source>showing a recording</source>
        <translation>zeigt eine Aufzeichnung</translation>
    </message>
    <message>
        <source>shunt</source>
        <translation>Shunt</translation>
    </message>
    <message>
        <source>sign</source>
        <translation>Zeichen</translation>
    </message>
    <message>
        <source>signs</source>
        <translation>Zeichen</translation>
    </message>
    <message>
        <source>slow</source>
        <comment>sign</comment>
        <translation>langsam</translation>
    </message>
    <message>
        <source>softer</source>
        <translation>leiser</translation>
    </message>
    <message>
        <source>something is under way already.</source>
        <translation>etwas ist schon im Gang.</translation>
    </message>
    <message>
        <source>sort by the next column</source>
        <translation>nach der nächsten Spalte ordnen</translation>
    </message>
    <message>
        <source>sound</source>
        <translation>Ton</translation>
    </message>
    <message>
        <source>sound off</source>
        <translation>Ton aus</translation>
    </message>
    <message>
        <source>sound: {follows}, {volume} %</source>
        <translation>Ton: {follows}, {volume} %</translation>
    </message>
    <message>
        <source>speed</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>speed before</source>
        <translation>Stufe davor</translation>
    </message>
    <message>
        <source>speed not recorded</source>
        <translation>Stufe nicht aufgezeichnet</translation>
    </message>
    <message>
        <source>speed not told: press 0–9</source>
        <translation>Stufe nicht gesagt: 0–9 drücken</translation>
    </message>
    <message>
        <source>speed {n}</source>
        <translation>Stufe {n}</translation>
    </message>
    <message>
        <source>speed {speed}</source>
        <translation>Stufe {speed}</translation>
    </message>
    <message>
        <source>speeds found</source>
        <translation>gefundene Stufen</translation>
    </message>
    <message>
        <source>start or stop</source>
        <translation>Start oder Stopp</translation>
    </message>
    <message>
        <source>start or stop recording</source>
        <translation>Aufzeichnung starten oder beenden</translation>
    </message>
    <message>
        <source>start, stop</source>
        <translation>Start, Stopp</translation>
    </message>
    <message>
        <source>start-up not judged for</source>
        <translation>Anlauf ohne Urteil für</translation>
    </message>
    <message>
        <source>start; twice: stop</source>
        <translation>Start; zweimal: Stopp</translation>
    </message>
    <message>
        <source>started</source>
        <translation>begonnen</translation>
    </message>
    <message>
        <source>starts</source>
        <comment>sign</comment>
        <translation>läuft an</translation>
    </message>
    <message>
        <source>state as proposed</source>
        <translation>Zustand wie vorgeschlagen</translation>
    </message>
    <message>
        <source>state of the motor: not known</source>
        <translation>Zustand des Motors: nicht bekannt</translation>
    </message>
    <message>
        <source>state of the motor: {word}, {words}</source>
        <translation>Zustand des Motors: {word}, {words}</translation>
    </message>
    <message>
        <source>step</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>stiff</source>
        <comment>sign</comment>
        <translation>schwer</translation>
    </message>
    <message>
        <source>stopping…</source>
        <translation>wird beendet…</translation>
    </message>
    <message>
        <source>supply is there from</source>
        <translation>Versorgung gilt als da ab</translation>
    </message>
    <message>
        <source>suspects: {told}</source>
        <translation>Verdächtige: {told}</translation>
    </message>
    <message>
        <source>suspicion</source>
        <translation>Verdacht</translation>
    </message>
    <message>
        <source>swap</source>
        <translation>tauschen</translation>
    </message>
    <message>
        <source>take</source>
        <translation>nehmen</translation>
    </message>
    <message>
        <source>take back the newest entry</source>
        <translation>den neuesten Eintrag zurücknehmen</translation>
    </message>
    <message>
        <source>take the chosen photo off the card</source>
        <translation>das gewählte Foto von der Karte nehmen</translation>
    </message>
    <message>
        <source>take the chosen recording in as a good one</source>
        <translation>die gewählte Aufzeichnung als gute aufnehmen</translation>
    </message>
    <message>
        <source>take the found speeds as commanded, or give them back</source>
        <translation>die gefundenen Stufen als geschaltet übernehmen oder zurückgeben</translation>
    </message>
    <message>
        <source>take the jumpers out</source>
        <translation>die Brücken herausnehmen</translation>
    </message>
    <message>
        <source>take the keys of your own from what is chosen</source>
        <translation>der Auswahl die eigenen Tasten nehmen</translation>
    </message>
    <message>
        <source>take the last good one out</source>
        <translation>die letzte gute herausnehmen</translation>
    </message>
    <message>
        <source>take the reading</source>
        <translation>Messwert nehmen</translation>
    </message>
    <message>
        <source>take the settled reading at this test point</source>
        <translation>den ruhigen Messwert an diesem Messpunkt nehmen</translation>
    </message>
    <message>
        <source>taken: {values}</source>
        <translation>genommen: {values}</translation>
    </message>
    <message>
        <source>tap</source>
        <translation>klopfen</translation>
    </message>
    <message>
        <source>temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>template</source>
        <translation>Vorlage</translation>
    </message>
    <message>
        <source>test point</source>
        <translation>Messpunkt</translation>
    </message>
    <message>
        <source>test point chosen</source>
        <translation>gewählter Messpunkt</translation>
    </message>
    <message>
        <source>the command of each speed</source>
        <translation>der Schaltung jeder Stufe</translation>
    </message>
    <message>
        <source>the complaint is there now: {words}, key H</source>
        <translation>der Fehler ist jetzt da: {words}, Taste H</translation>
    </message>
    <message>
        <source>the first command</source>
        <translation>der ersten Schaltung</translation>
    </message>
    <message>
        <source>the good ones</source>
        <translation>die guten</translation>
    </message>
    <message>
        <source>the leads or the clamp&apos;s arrow are the other way round</source>
        <translation>die Leitungen oder der Pfeil der Zange sind andersherum</translation>
    </message>
    <message>
        <source>the mark stands at, in seconds; left and right: one sample</source>
        <translation>die Marke steht bei, in Sekunden; links und rechts: ein Messwert</translation>
    </message>
    <message>
        <source>the new part is in</source>
        <translation>das neue Teil ist eingebaut</translation>
    </message>
    <message>
        <source>the new part is in the vehicle now</source>
        <translation>das neue Teil ist jetzt im Fahrzeug</translation>
    </message>
    <message>
        <source>the old part is in</source>
        <translation>das alte Teil ist eingebaut</translation>
    </message>
    <message>
        <source>the old part is in the vehicle now</source>
        <translation>das alte Teil ist jetzt im Fahrzeug</translation>
    </message>
    <message>
        <source>the run has not been started.</source>
        <translation>der Lauf wurde nicht gestartet.</translation>
    </message>
    <message>
        <source>the step is at speed</source>
        <translation>die Stufe ist</translation>
    </message>
    <message>
        <source>there is no meter.</source>
        <translation>es gibt kein Messgerät.</translation>
    </message>
    <message>
        <source>this key</source>
        <translation>diese Taste</translation>
    </message>
    <message>
        <source>this test point can&apos;t be reached</source>
        <translation>dieser Messpunkt ist unzugänglich</translation>
    </message>
    <message>
        <source>threshold left when passed back by the part</source>
        <translation>Schwelle verlassen bei Rückgang um den Teil</translation>
    </message>
    <message>
        <source>time since {what} ({unit}), as read</source>
        <translation>Zeit seit {what} ({unit}), wie gemessen</translation>
    </message>
    <message>
        <source>timing</source>
        <translation>Zeitlage</translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
    <message>
        <source>to date</source>
        <translation>bis Datum</translation>
    </message>
    <message>
        <source>tone follows</source>
        <translation>Ton folgt</translation>
    </message>
    <message>
        <source>trace</source>
        <translation>Kurve</translation>
    </message>
    <message>
        <source>turn the order</source>
        <translation>Reihenfolge umkehren</translation>
    </message>
    <message>
        <source>turns through the clamp of channel {name}</source>
        <translation>Windungen durch die Zange von Kanal {name}</translation>
    </message>
    <message>
        <source>turns through the clamp of channel {name}, as a number</source>
        <translation>Windungen durch die Zange von Kanal {name}, als Zahl</translation>
    </message>
    <message>
        <source>type</source>
        <translation>eintippen</translation>
    </message>
    <message>
        <source>type a reading</source>
        <translation>Messwert eintippen</translation>
    </message>
    <message>
        <source>type it</source>
        <translation>eintippen</translation>
    </message>
    <message>
        <source>typed by hand</source>
        <translation>von Hand eingetippt</translation>
    </message>
    <message>
        <source>typed by hand {age} s ago</source>
        <translation>von Hand, vor {age} s</translation>
    </message>
    <message>
        <source>typed by hand: nothing yet, press =</source>
        <translation>von Hand: noch nichts, = drücken</translation>
    </message>
    <message>
        <source>under limit</source>
        <translation>unter Grenzwert</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>zurück</translation>
    </message>
    <message>
        <source>undo mark</source>
        <translation>Marke zurück</translation>
    </message>
    <message>
        <source>undo: drop what is not written, else the newest edit by one on top</source>
        <translation>zurück: Ungeschriebenes verwerfen, sonst den neuesten Nachtrag zurücknehmen</translation>
    </message>
    <message>
        <source>unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>use the kept zero for channel {name}</source>
        <translation>den behaltenen Nullpunkt für Kanal {name} verwenden</translation>
    </message>
    <message>
        <source>use the {words}, for channel {channel}</source>
        <translation>{words} verwenden, für Kanal {channel}</translation>
    </message>
    <message>
        <source>use {device} as {profile}</source>
        <translation>{device} als {profile} verwenden</translation>
    </message>
    <message>
        <source>used</source>
        <comment>condition</comment>
        <translation>gebraucht</translation>
    </message>
    <message>
        <source>value of the limit, empty: none</source>
        <translation>Wert des Grenzwerts, leer: keiner</translation>
    </message>
    <message>
        <source>vehicle</source>
        <translation>Fahrzeug</translation>
    </message>
    <message>
        <source>vehicle</source>
        <comment>condition</comment>
        <translation>Fahrzeug</translation>
    </message>
    <message>
        <source>vehicle, part, work order, complaint…</source>
        <translation>Fahrzeug, Teil, Auftragsnummer, Beanstandung…</translation>
    </message>
    <message>
        <source>verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>verdict: what confirms it, and why it failed</source>
        <translation>Urteil: was es bestätigt, und warum es ausfiel</translation>
    </message>
    <message>
        <source>voltage</source>
        <translation>Spannung</translation>
    </message>
    <message>
        <source>voltage (V)</source>
        <translation>Spannung (V)</translation>
    </message>
    <message>
        <source>voltage and current against time</source>
        <translation>Spannung und Strom über der Zeit</translation>
    </message>
    <message>
        <source>voltage over the brushes</source>
        <translation>Spannung über den Bürsten</translation>
    </message>
    <message>
        <source>volts, age</source>
        <translation>Volt, Alter</translation>
    </message>
    <message>
        <source>waiting for readings</source>
        <translation>wartet auf Messwerte</translation>
    </message>
    <message>
        <source>warnings about the circuit checks</source>
        <translation>Warnungen zu den Stromlaufprüfungen</translation>
    </message>
    <message>
        <source>warnings about the {name}</source>
        <translation>Warnungen zu: {name}</translation>
    </message>
    <message>
        <source>what</source>
        <translation>was</translation>
    </message>
    <message>
        <source>what became of it</source>
        <translation>was daraus wurde</translation>
    </message>
    <message>
        <source>what came of the comparison</source>
        <translation>was der Vergleich ergab</translation>
    </message>
    <message>
        <source>what channel {channel} is connected to</source>
        <translation>woran Kanal {channel} angeschlossen ist</translation>
    </message>
    <message>
        <source>what channel {channel} means: {words}</source>
        <translation>was Kanal {channel} bedeutet: {words}</translation>
    </message>
    <message>
        <source>what could not be put into the pack</source>
        <translation>was nicht ins Paket konnte</translation>
    </message>
    <message>
        <source>what each key does</source>
        <translation>was jede Taste tut</translation>
    </message>
    <message>
        <source>what each outcome would mean</source>
        <translation>was jedes Ergebnis hieße</translation>
    </message>
    <message>
        <source>what is known of the chosen one</source>
        <translation>was von der Auswahl bekannt ist</translation>
    </message>
    <message>
        <source>what is under way</source>
        <translation>was gerade geschieht</translation>
    </message>
    <message>
        <source>what is wrong with what was entered</source>
        <translation>was an der Eingabe falsch ist</translation>
    </message>
    <message>
        <source>what kind of meter that is</source>
        <translation>welche Art Messgerät das ist</translation>
    </message>
    <message>
        <source>what looks wrong on the job card</source>
        <translation>was auf der Auftragskarte falsch aussieht</translation>
    </message>
    <message>
        <source>what must be chosen first</source>
        <translation>was erst gewählt werden muss</translation>
    </message>
    <message>
        <source>what speaks against the comparison</source>
        <translation>was gegen den Vergleich spricht</translation>
    </message>
    <message>
        <source>what the check found</source>
        <translation>was die Prüfung fand</translation>
    </message>
    <message>
        <source>what the folders say</source>
        <translation>was die Ordner sagen</translation>
    </message>
    <message>
        <source>what the job card does not say</source>
        <translation>was die Auftragskarte nicht sagt</translation>
    </message>
    <message>
        <source>what the job card says</source>
        <translation>was die Auftragskarte sagt</translation>
    </message>
    <message>
        <source>what the keys do</source>
        <translation>was die Tasten tun</translation>
    </message>
    <message>
        <source>what the lines are</source>
        <translation>was die Linien sind</translation>
    </message>
    <message>
        <source>what the motor was doing, over time</source>
        <translation>was der Motor tat, über der Zeit</translation>
    </message>
    <message>
        <source>what to watch now</source>
        <translation>worauf jetzt zu achten ist</translation>
    </message>
    <message>
        <source>what was checked</source>
        <translation>was geprüft wurde</translation>
    </message>
    <message>
        <source>what was found at the chosen speed</source>
        <translation>was bei der gewählten Stufe gefunden wurde</translation>
    </message>
    <message>
        <source>what was found; Enter opens</source>
        <translation>was gefunden wurde; Enter öffnet</translation>
    </message>
    <message>
        <source>what was taken</source>
        <translation>was genommen wurde</translation>
    </message>
    <message>
        <source>what you see, hear or did</source>
        <translation>was du siehst, hörst oder getan hast</translation>
    </message>
    <message>
        <source>what {device} answered</source>
        <translation>was {device} antwortete</translation>
    </message>
    <message>
        <source>wheel</source>
        <translation>Rad</translation>
    </message>
    <message>
        <source>where</source>
        <translation>wo</translation>
    </message>
    <message>
        <source>where the job is kept</source>
        <translation>wo der Auftrag gespeichert ist</translation>
    </message>
    <message>
        <source>which stretch is on screen</source>
        <translation>welcher Abschnitt zu sehen ist</translation>
    </message>
    <message>
        <source>who</source>
        <translation>wer</translation>
    </message>
    <message>
        <source>who makes the edit</source>
        <translation>wer den Nachtrag macht</translation>
    </message>
    <message>
        <source>who measured is not stated</source>
        <translation>wer gemessen hat, ist nicht angegeben</translation>
    </message>
    <message>
        <source>who measured with what, conditions and notes</source>
        <translation>wer womit gemessen hat, Bedingungen und Hinweise</translation>
    </message>
    <message>
        <source>whole screen</source>
        <translation>ganzer Bildschirm</translation>
    </message>
    <message>
        <source>why</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>why nothing can be kept in the folder</source>
        <translation>warum im Ordner nichts aufbewahrt werden kann</translation>
    </message>
    <message>
        <source>why these can&apos;t be compared</source>
        <translation>warum diese nicht verglichen werden können</translation>
    </message>
    <message>
        <source>wider</source>
        <translation>weiter</translation>
    </message>
    <message>
        <source>wider, closer</source>
        <translation>weiter, näher</translation>
    </message>
    <message>
        <source>wiggle</source>
        <translation>wackeln</translation>
    </message>
    <message>
        <source>windows</source>
        <translation>Fenster</translation>
    </message>
    <message>
        <source>with its unit</source>
        <translation>mit Einheit</translation>
    </message>
    <message>
        <source>with their unit</source>
        <translation>mit Einheit</translation>
    </message>
    <message>
        <source>with, without customer</source>
        <translation>mit, ohne Kunde</translation>
    </message>
    <message>
        <source>withdraw the mark, or put it back</source>
        <translation>die Marke zurückziehen oder zurückholen</translation>
    </message>
    <message>
        <source>withdrawn</source>
        <translation>zurückgezogen</translation>
    </message>
    <message>
        <source>withdrawn: counts for nothing</source>
        <translation>zurückgezogen: zählt nicht</translation>
    </message>
    <message>
        <source>within A</source>
        <translation>± erlaubt A</translation>
    </message>
    <message>
        <source>words to find: vehicle, part, work order, complaint</source>
        <translation>Suchwörter: Fahrzeug, Teil, Auftragsnummer, Beanstandung</translation>
    </message>
    <message>
        <source>work order</source>
        <translation>Auftragsnummer</translation>
    </message>
    <message>
        <source>working out the circuit…</source>
        <translation>Stromlauf wird berechnet…</translation>
    </message>
    <message>
        <source>workshop that claims</source>
        <translation>beantragende Werkstatt</translation>
    </message>
    <message>
        <source>write the edit</source>
        <translation>den Nachtrag schreiben</translation>
    </message>
    <message>
        <source>year-month-day</source>
        <translation>Jahr-Monat-Tag</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>your own</source>
        <translation>eigene</translation>
    </message>
    <message>
        <source>zero</source>
        <translation>nullen</translation>
    </message>
    <message>
        <source>zero clamp</source>
        <translation>Zange nullen</translation>
    </message>
    <message>
        <source>zero the clamp</source>
        <translation>Zange nullen</translation>
    </message>
    <message>
        <source>zero typed</source>
        <translation>Null eingetippt</translation>
    </message>
    <message>
        <source>zoom</source>
        <translation>Zoom</translation>
    </message>
    <message>
        <source>{done} of {many} ports have answered or been given up</source>
        <translation>{done} von {many} Anschlüssen haben geantwortet oder sind aufgegeben</translation>
    </message>
    <message>
        <source>{doubts} ⚠ meter</source>
        <translation>{doubts} ⚠</translation>
    </message>
    <message>
        <source>{failed} failed</source>
        <translation>{failed} nicht bestanden</translation>
    </message>
    <message>
        <source>{fits} profiles fit: choose by what is connected</source>
        <translation>{fits} Profile passen: nach dem Angeschlossenen wählen</translation>
    </message>
    <message>
        <source>{folder}  (not sealed)</source>
        <translation>{folder}  (nicht versiegelt)</translation>
    </message>
    <message>
        <source>{folder} can&apos;t be looked into now: plug in or connect its disk.</source>
        <translation>In {folder} kann jetzt nicht gesucht werden: Datenträger einstecken oder verbinden.</translation>
    </message>
    <message>
        <source>{folder} {many}. Choose the folder of one recording.</source>
        <translation>{folder} {many}. Den Ordner einer Aufzeichnung wählen.</translation>
    </message>
    <message>
        <source>{folder}: can&apos;t be looked into: {why}.</source>
        <translation>{folder}: dort kann nicht gesucht werden: {why}.</translation>
    </message>
    <message>
        <source>{found} {unit}  stands</source>
        <translation>{found} {unit}  steht</translation>
    </message>
    <message>
        <source>{keys}: all pages</source>
        <translation>{keys}: alle Seiten</translation>
    </message>
    <message>
        <source>{key} now does: {action}.{instead}{over}</source>
        <translation>{key} tut jetzt: {action}.{instead}{over}</translation>
    </message>
    <message>
        <source>{kinds}: {marks} of {points}</source>
        <translation>{kinds}: {marks} von {points}</translation>
    </message>
    <message>
        <source>{label} in {unit}</source>
        <translation>{label} in {unit}</translation>
    </message>
    <message>
        <source>{label} is still as last time</source>
        <translation>{label} ist noch wie letztes Mal</translation>
    </message>
    <message>
        <source>{label}, in {unit}</source>
        <translation>{label}, in {unit}</translation>
    </message>
    <message>
        <source>{left_out} without a value</source>
        <translation>{left_out} ohne Wert</translation>
    </message>
    <message>
        <source>{limit}: {old} becomes {new}</source>
        <translation>{limit}: {old} wird {new}</translation>
    </message>
    <message>
        <source>{lost} gone</source>
        <translation>{lost} fehlen</translation>
    </message>
    <message>
        <source>{low} to {high}</source>
        <translation>{low} bis {high}</translation>
    </message>
    <message numerus="yes">
        <source>{many} cut off: seal them (C)</source>
        <translation>
            <numerusform>{many} abgebrochen: versiegeln (C)</numerusform>
            <numerusform>{many} abgebrochen: versiegeln (C)</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>{many} cut off: seal them as recovered</source>
        <translation>
            <numerusform>{many} abgebrochen: als wiederhergestellt versiegeln</numerusform>
            <numerusform>{many} abgebrochen: als wiederhergestellt versiegeln</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>{many} photos added</source>
        <translation>
            <numerusform>{many} Foto hinzugefügt</numerusform>
            <numerusform>{many} Fotos hinzugefügt</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>{many} ports</source>
        <translation>
            <numerusform>{many} Anschluss</numerusform>
            <numerusform>{many} Anschlüsse</numerusform>
        </translation>
    </message>
    <message>
        <source>{mark_words} becomes speed {speed}</source>
        <translation>{mark_words} wird Stufe {speed}</translation>
    </message>
    <message>
        <source>{mark_words} is put back and counts again</source>
        <translation>{mark_words} ist zurückgeholt und zählt wieder</translation>
    </message>
    <message>
        <source>{mark_words} is withdrawn and counts for nothing</source>
        <translation>{mark_words} ist zurückgezogen und zählt nicht</translation>
    </message>
    <message>
        <source>{mark_words} moves to {t_ns} s ({by_s} s)</source>
        <translation>{mark_words} rückt auf {t_ns} s ({by_s} s)</translation>
    </message>
    <message>
        <source>{meter}: calibration OVERDUE since {calibration_due}.</source>
        <translation>{meter}: Kalibrierung ABGELAUFEN seit {calibration_due}.</translation>
    </message>
    <message>
        <source>{missing} not stated on the job card; the pack says so.</source>
        <translation>{missing} auf der Auftragskarte nicht angegeben; das Paket sagt es.</translation>
    </message>
    <message>
        <source>{name} is off the card. Its file stays; undo puts it back.</source>
        <translation>{name} ist von der Karte genommen. Die Datei bleibt; Rückgängig holt es zurück.</translation>
    </message>
    <message>
        <source>{name}, {date}, or only the year</source>
        <translation>{name}, {date}, oder nur das Jahr</translation>
    </message>
    <message>
        <source>{name}: no reading</source>
        <translation>{name}: kein Messwert</translation>
    </message>
    <message>
        <source>{name}: no reading ({left_out} without a value)</source>
        <translation>{name}: kein Messwert ({left_out} ohne Wert)</translation>
    </message>
    <message>
        <source>{name}: {error} This is a fault of the program.</source>
        <translation>{name}: {error} Das ist ein Fehler des Programms.</translation>
    </message>
    <message>
        <source>{name}: {error} This is a fault of the program; please report it.</source>
        <translation>{name}: {error} Das ist ein Fehler des Programms; bitte melden.</translation>
    </message>
    <message>
        <source>{name}: {fitted} part in</source>
        <translation>{name}: Teil im Fahrzeug: {fitted}</translation>
    </message>
    <message>
        <source>{pages}; recording: all but Circuit</source>
        <translation>{pages}; beim Aufzeichnen alle außer Stromlauf</translation>
    </message>
    <message>
        <source>{pages}; recording: all pages</source>
        <translation>{pages}; beim Aufzeichnen alle</translation>
    </message>
    <message>
        <source>{path} is not there any more.</source>
        <translation>{path} ist nicht mehr da.</translation>
    </message>
    <message>
        <source>{plain} out</source>
        <translation>{plain} raus</translation>
    </message>
    <message>
        <source>{ports} asked: a meter was found on {fitting}.</source>
        <translation>{ports} gefragt: ein Messgerät antwortete an {fitting}.</translation>
    </message>
    <message>
        <source>{root} — not there now</source>
        <translation>{root} — jetzt nicht da</translation>
    </message>
    <message>
        <source>{run}. Meters: {meters}.</source>
        <translation>{run}. Messgeräte: {meters}.</translation>
    </message>
    <message>
        <source>{shown} found</source>
        <translation>{shown} gefunden</translation>
    </message>
    <message>
        <source>{sign}speed {speed}</source>
        <translation>{sign}Stufe {speed}</translation>
    </message>
    <message>
        <source>{sign}zero {age} old</source>
        <translation>{sign}Null {age} alt</translation>
    </message>
    <message>
        <source>{there} is no folder. Choose another folder.</source>
        <translation>{there} ist kein Ordner. Einen anderen Ordner wählen.</translation>
    </message>
    <message>
        <source>{told}, spread {spread_a} A (standard deviation)</source>
        <translation>{told}, Streuung {spread_a} A (Standardabweichung)</translation>
    </message>
    <message>
        <source>{url} is not there now. Plug the lead in, then press Look for ports again.</source>
        <translation>{url} ist jetzt nicht da. Leitung einstecken, dann Anschlüsse neu suchen drücken.</translation>
    </message>
    <message>
        <source>{values} readings</source>
        <translation>{values} Messwerte</translation>
    </message>
    <message>
        <source>{vehicles} vehicles</source>
        <translation>{vehicles} Fahrzeuge</translation>
    </message>
    <message>
        <source>{verdict}  {kind}  at {at}
{statement}</source>
        <translation>{verdict}  {kind}  bei {at}
{statement}</translation>
    </message>
    <message>
        <source>{when} in {folder}</source>
        <translation>{when} in {folder}</translation>
    </message>
    <message>
        <source>{words} Please report it.</source>
        <translation>{words} Bitte melden.</translation>
    </message>
    <message>
        <source>{words}, {lost} bytes lost</source>
        <translation>{words}, {lost} Bytes verloren</translation>
    </message>
    <message>
        <source>{words}: {value}, key F{at}</source>
        <translation>{words}: {value}, Taste F{at}</translation>
    </message>
    <message>
        <source>… and {said} more, on the Meters page (M)</source>
        <translation>… und {said} weitere, auf der Seite Messgeräte (M)</translation>
    </message>
    <message>
        <source>← → one sample; or type seconds</source>
        <translation>← → ein Messwert; oder Sekunden eintippen</translation>
    </message>
    <message>
        <source>↑ ↓ line · ← → choice · digits: number · Enter: it holds now · Del: not said</source>
        <translation>↑ ↓ Zeile · ← → Wahl · Ziffern: Zahl · Enter: gilt jetzt · Entf: nicht gesagt</translation>
    </message>
    <message>
        <source>⇄ Swap</source>
        <translation>⇄ Tauschen</translation>
    </message>
    <message>
        <source>≠ THEY DIFFER</source>
        <translation>≠ VERSCHIEDEN</translation>
    </message>
    <message>
        <source>≠ differ</source>
        <translation>≠ verschieden</translation>
    </message>
    <message>
        <source>■ Stop</source>
        <translation>■ Stopp</translation>
    </message>
    <message>
        <source>■ Stop?</source>
        <translation>■ Stopp?</translation>
    </message>
    <message>
        <source>□ new part</source>
        <translation>□ neues Teil</translation>
    </message>
    <message>
        <source>● Start</source>
        <translation>● Start</translation>
    </message>
    <message>
        <source>⚠ As beside (PgDn): {names}.</source>
        <translation>⚠ Wie daneben (Bild↓): {names}.</translation>
    </message>
    <message>
        <source>⚠ Cautions  ▸</source>
        <translation>⚠ Vorsicht  ▸</translation>
    </message>
    <message>
        <source>⚠ Cautions  ▾</source>
        <translation>⚠ Vorsicht  ▾</translation>
    </message>
    <message>
        <source>⚠ Its folder can&apos;t be looked into now; this is what was known of it.</source>
        <translation>⚠ In seinem Ordner kann jetzt nicht gesucht werden; das war davon bekannt.</translation>
    </message>
    <message>
        <source>⚠ METER  at {at}
{source}: {event}</source>
        <translation>⚠ MESSGERÄT  bei {at}
{source}: {event}</translation>
    </message>
    <message>
        <source>⚠ METER{at}
{doubt}</source>
        <translation>⚠ MESSGERÄT{at}
{doubt}</translation>
    </message>
    <message>
        <source>⚠ Not the same on both sides: {names}. {widens}</source>
        <translation>⚠ Nicht auf beiden Seiten gleich: {names}. {widens}</translation>
    </message>
    <message>
        <source>⚠ dial turned?</source>
        <translation>⚠ Schalter verdreht?</translation>
    </message>
    <message>
        <source>⚠ no zero: press Z</source>
        <translation>⚠ kein Nullpunkt: Z drücken</translation>
    </message>
    <message>
        <source>⚠ not used: say first what the channel is connected to</source>
        <translation>⚠ nicht benutzt: erst sagen, woran der Kanal angeschlossen ist</translation>
    </message>
    <message>
        <source>✎ NOTE  at {at}
{event}</source>
        <translation>✎ NOTIZ  bei {at}
{event}</translation>
    </message>
    <message>
        <source>✓ PASS</source>
        <translation>✓ BESTANDEN</translation>
    </message>
    <message>
        <source>✓ PASS: differs by less than</source>
        <translation>✓ BESTANDEN: weicht weniger ab als</translation>
    </message>
    <message>
        <source>✓ PASS: within what good ones draw</source>
        <translation>✓ BESTANDEN: im Bereich der guten</translation>
    </message>
    <message>
        <source>✓ in use below</source>
        <translation>✓ unten verwendet</translation>
    </message>
    <message>
        <source>✓ pass</source>
        <translation>✓ bestanden</translation>
    </message>
    <message>
        <source>✕ FAIL</source>
        <translation>✕ NICHT BESTANDEN</translation>
    </message>
    <message>
        <source>✕ FAIL: differs by more than</source>
        <translation>✕ NICHT BESTANDEN: weicht mehr ab als</translation>
    </message>
    <message>
        <source>✕ FAIL: not within what good ones draw</source>
        <translation>✕ NICHT BESTANDEN: nicht im Bereich der guten</translation>
    </message>
    <message>
        <source>✕ NOT COMPARED</source>
        <translation>✕ NICHT VERGLICHEN</translation>
    </message>
    <message>
        <source>✕ fail</source>
        <translation>✕ nicht best.</translation>
    </message>
</context>
</TS>
