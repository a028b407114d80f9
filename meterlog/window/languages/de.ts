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
        <source> (speed {0})</source>
        <translation> (Stufe {0})</translation>
    </message>
    <message>
        <source> (the last {0} may be left out)</source>
        <translation> (das letzte {0} darf fehlen)</translation>
    </message>
    <message>
        <source> (the meter&apos;s accuracy and {0} {1} not in)</source>
        <translation> (Genauigkeit des Messgeräts und {0} {1} nicht darin)</translation>
    </message>
    <message>
        <source> (what is not stated of the meters, usually up to {0} A, decides)</source>
        <translation> (entscheidend ist, was von den Messgeräten nicht angegeben ist, üblich bis {0} A)</translation>
    </message>
    <message>
        <source> ({0} more like it)</source>
        <translation> ({0} weitere dieser Art)</translation>
    </message>
    <message>
        <source> ({0} recordings, the newest)</source>
        <translation> ({0} Aufzeichnungen, die neueste)</translation>
    </message>
    <message>
        <source> ({0} {1} not in)</source>
        <translation> ({0} {1} nicht darin)</translation>
    </message>
    <message>
        <source> It was taken {0} min before the start.</source>
        <translation> Er wurde {0} min vor dem Start genommen.</translation>
    </message>
    <message>
        <source> Single readings catch on or off by chance: losses of up to {0} s can&apos;t be told from that and are not held against anything.</source>
        <translation> Einzelne Messwerte treffen Ein oder Aus zufällig: Ausfälle bis {0} s sind davon nicht zu unterscheiden und werden niemandem angelastet.</translation>
    </message>
    <message>
        <source> The current rises and falls once a turn by ± {0} %: consistent with a tight bearing, a bent shaft or a commutator out of round, not with a bar.</source>
        <translation> Der Strom steigt und fällt einmal je Umdrehung um ± {0} %: passend zu einem strengen Lager, einer krummen Welle oder einem unrunden Kollektor, nicht zu einer Lamelle.</translation>
    </message>
    <message>
        <source> The part before can&apos;t be read now ({0}). {1}</source>
        <translation> Der Teil davor ist jetzt nicht lesbar ({0}). {1}</translation>
    </message>
    <message>
        <source> The parts could not be put together: {0}. {1}</source>
        <translation> Die Teile ließen sich nicht zusammensetzen: {0}. {1}</translation>
    </message>
    <message>
        <source> The whole of it is in {0}.</source>
        <translation> Das Ganze liegt in {0}.</translation>
    </message>
    <message>
        <source> There is one in it: {0}.</source>
        <translation> Darin liegt eine: {0}.</translation>
    </message>
    <message>
        <source> What is left without ripple and turn is {0} times the ripple: consistent with brushes that bounce, stick or are worn, or with a noisy clamp.</source>
        <translation> Was ohne Welligkeit und Umdrehung bleibt, ist das {0}-Fache der Welligkeit: passend zu Bürsten, die springen, klemmen oder verschlissen sind, oder zu einer rauschenden Zange.</translation>
    </message>
    <message>
        <source> With only {0} good motors the interval is {1} deviations wide to each side; more of them make it narrower.</source>
        <translation> Mit nur {0} guten Motoren ist der Bereich nach jeder Seite {1} Abweichungen breit; mehr davon machen ihn enger.</translation>
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
        <source> at {0}</source>
        <translation> bei {0}</translation>
    </message>
    <message>
        <source> at {0} A</source>
        <translation> bei {0} A</translation>
    </message>
    <message>
        <source> at {0} s</source>
        <translation> bei {0} s</translation>
    </message>
    <message>
        <source> at {0} times the current it may draw</source>
        <translation> beim {0}-Fachen des erlaubten Stroms</translation>
    </message>
    <message>
        <source> range {0}</source>
        <translation> Bereich {0}</translation>
    </message>
    <message>
        <source> sound {0} A {1} fuse</source>
        <translation> gesunde {0}-A-Sicherung {1}</translation>
    </message>
    <message>
        <source> while {0} V stood across the motor</source>
        <translation>, während {0} V am Motor anlagen</translation>
    </message>
    <message>
        <source> with serial number {0}</source>
        <translation> mit Seriennummer {0}</translation>
    </message>
    <message>
        <source> worth {0}</source>
        <translation>, so viel wert wie {0}</translation>
    </message>
    <message>
        <source> {0} level(s) were seen where the limits know {1} speeds: a label may be another speed&apos;s, so that the limits of single speeds were not applied.</source>
        <translation> {0} Niveau(s) waren zu sehen, die Grenzwerte kennen {1} Stufen: eine Bezeichnung kann zu einer anderen Stufe gehören, daher wurden die Grenzwerte einzelner Stufen nicht angewandt.</translation>
    </message>
    <message>
        <source>(already so at the first reading)</source>
        <translation>(schon beim ersten Messwert so)</translation>
    </message>
    <message>
        <source>(already so at the first reading, still so at the last)</source>
        <translation>(schon beim ersten Messwert so, noch so beim letzten)</translation>
    </message>
    <message>
        <source>(at different speeds: not comparable)</source>
        <translation>(auf verschiedenen Stufen: nicht vergleichbar)</translation>
    </message>
    <message>
        <source>(comes and goes)</source>
        <translation>(kommt und geht)</translation>
    </message>
    <message>
        <source>(fuse, relay and wires included)</source>
        <translation>(mit Sicherung, Relais und Leitungen)</translation>
    </message>
    <message>
        <source>(of different ratings: not comparable)</source>
        <translation>(verschiedene Nennwerte: nicht vergleichbar)</translation>
    </message>
    <message>
        <source>(still so at the last reading)</source>
        <translation>(noch so beim letzten Messwert)</translation>
    </message>
    <message>
        <source>(switched itself off?</source>
        <translation>(hat sich abgeschaltet?</translation>
    </message>
    <message>
        <source>(the meter&apos;s accuracy not in)</source>
        <translation>(Genauigkeit des Messgeräts nicht darin)</translation>
    </message>
    <message>
        <source>, a supply that fell</source>
        <translation>, eine abgesunkene Versorgung</translation>
    </message>
    <message>
        <source>, and {0} times it came back</source>
        <translation>, und {0}-mal kam er zurück</translation>
    </message>
    <message>
        <source>, as in a circuit in order,</source>
        <translation>, wie bei einem Stromkreis in Ordnung,</translation>
    </message>
    <message>
        <source>, as it should</source>
        <translation>, wie es soll</translation>
    </message>
    <message>
        <source>, as measured: {0} {1} by the new</source>
        <translation>, wie gemessen: {0} {1} beim neuen</translation>
    </message>
    <message>
        <source>, as {0}</source>
        <translation>, da {0}</translation>
    </message>
    <message>
        <source>, but can&apos;t tell, as {0}</source>
        <translation>, aber nicht zu sagen, da {0}</translation>
    </message>
    <message>
        <source>, confidence {0}</source>
        <translation>, Vertrauen {0}</translation>
    </message>
    <message>
        <source>, its edges blurred by the rest</source>
        <translation>, an den Rändern vom Rest verwischt</translation>
    </message>
    <message>
        <source>, kept for drift since the zero</source>
        <translation>, aufgehoben für die Drift seit dem Nullen</translation>
    </message>
    <message>
        <source>, low confidence</source>
        <translation>, wenig gesichert</translation>
    </message>
    <message>
        <source>, one reading every {0} s,</source>
        <translation>, ein Messwert alle {0} s,</translation>
    </message>
    <message>
        <source>, or another</source>
        <translation>, oder anderes</translation>
    </message>
    <message>
        <source>, or more air</source>
        <translation>, oder mehr Luft</translation>
    </message>
    <message>
        <source>, or the computer slept</source>
        <translation>, oder der Computer schlief</translation>
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
        <source>, to begin with</source>
        <translation>, zu Beginn</translation>
    </message>
    <message>
        <source>, up to {0} {1},</source>
        <translation>, bis {0} {1},</translation>
    </message>
    <message>
        <source>, whose true peak was higher</source>
        <translation>, dessen wahre Spitze höher war</translation>
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
        <source>, {0} s after a tap</source>
        <translation>, {0} s nach einem Klopfen</translation>
    </message>
    <message>
        <source>1 row was</source>
        <translation>1 Zeile wurde</translation>
    </message>
    <message>
        <source>11.8 V to 14.7 V makes 40 % of current</source>
        <translation>11,8 V bis 14,7 V macht 40 % im Strom</translation>
    </message>
    <message>
        <source>: the lines of one accuracy statement are one rectangle</source>
        <translation>: die Zeilen einer Genauigkeitsangabe sind ein Rechteck</translation>
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
        <source>; a peak is more than the meter or the clamp is stated for: it may be higher</source>
        <translation>; eine Spitze ist mehr, als für Messgerät oder Zange angegeben ist: sie kann höher sein</translation>
    </message>
    <message>
        <source>; and {0} more</source>
        <translation>; und {0} mehr</translation>
    </message>
    <message>
        <source>; at least {0} are asked for: wait until it stops, and tap again.</source>
        <translation>; mindestens {0} sind verlangt: warten, bis es steht, und noch einmal klopfen.</translation>
    </message>
    <message>
        <source>; at speed {0} the motor stands, at speed {1} it turns: drag that stalls it on low, not a rotor held for good</source>
        <translation>; auf Stufe {0} steht der Motor, auf Stufe {1} dreht er: Schwergang, der ihn auf kleiner Stufe stehen lässt, kein dauernd blockierter Läufer</translation>
    </message>
    <message>
        <source>; but the voltage at the motor was high as well, which raises the current</source>
        <translation>; aber auch die Spannung am Motor war hoch, was den Strom erhöht</translation>
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
        <source>; in {0} of these times without current it came back in between, for less than the {1} s that count (min_dwell_s): can&apos;t tell whether it was gone at the tap</source>
        <translation>; in {0} dieser Zeiten ohne Strom kam er zwischendurch wieder, für weniger als die {1} s, die zählen (min_dwell_s): nicht zu sagen, ob er beim Klopfen weg war</translation>
    </message>
    <message>
        <source>; it stood there for {0} % of its steady running, down to {1} V else</source>
        <translation>; dort stand er für {0} % des ruhigen Laufs, sonst bis hinab auf {1} V</translation>
    </message>
    <message>
        <source>; no steady current at its speed to compare with</source>
        <translation>; kein ruhiger Strom bei seiner Stufe zum Vergleich</translation>
    </message>
    <message>
        <source>; not in: {0}</source>
        <translation>; nicht darin: {0}</translation>
    </message>
    <message>
        <source>; one of {0} s would show with a chance of {1} %</source>
        <translation>; einer von {0} s wäre mit {1} % Wahrscheinlichkeit zu sehen</translation>
    </message>
    <message>
        <source>; others say 0.08 to 0.25 s</source>
        <translation>; andere nennen 0,08 bis 0,25 s</translation>
    </message>
    <message>
        <source>; others say by 60 s, from memory</source>
        <translation>; andere nennen bis 60 s, aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>; others say not before 0.03 s</source>
        <translation>; andere nennen nicht vor 0,03 s</translation>
    </message>
    <message>
        <source>; others say not before 0.08 s</source>
        <translation>; andere nennen nicht vor 0,08 s</translation>
    </message>
    <message>
        <source>; probability by chance {0} (permutation of the tap times over the time without current, {1} arrangements)</source>
        <translation>; Wahrscheinlichkeit durch Zufall {0} (Vertauschung der Klopfzeiten über die Zeit ohne Strom, {1} Anordnungen)</translation>
    </message>
    <message>
        <source>; the feed held meanwhile</source>
        <translation>; das Plus hielt dabei</translation>
    </message>
    <message>
        <source>; the feed moved a little the same way, but not enough to explain it</source>
        <translation>; das Plus bewegte sich etwas in dieselbe Richtung, aber nicht genug, um es zu erklären</translation>
    </message>
    <message>
        <source>; the feed was not read with it, so that a short sag of the supply is not excluded</source>
        <translation>; das Plus wurde dabei nicht gemessen, sodass ein kurzer Einbruch der Versorgung nicht ausgeschlossen ist</translation>
    </message>
    <message>
        <source>; the longest:</source>
        <translation>; der längste:</translation>
    </message>
    <message>
        <source>; the meter showed an overload at the peak: it is higher</source>
        <translation>; das Messgerät zeigte bei der Spitze Überlauf: sie ist höher</translation>
    </message>
    <message>
        <source>; the meter&apos;s accuracy is not known, and a usual one ({0} A) could turn the verdict over</source>
        <translation>; die Genauigkeit des Messgeräts ist nicht bekannt, und ein üblicher Wert ({0} A) könnte das Urteil umkehren</translation>
    </message>
    <message>
        <source>; the readings stand at the peak, as at the end of a range: it may be higher</source>
        <translation>; die Messwerte bleiben bei der Spitze stehen wie am Ende eines Messbereichs: sie kann höher sein</translation>
    </message>
    <message>
        <source>; the readings were too slow to show the true peaks</source>
        <translation>; die Messwerte waren zu langsam für die wahren Spitzen</translation>
    </message>
    <message>
        <source>; the return rose by {0} V with it: the ground side, not the motor</source>
        <translation>; das Minus stieg dabei um {0} V: die Masseseite, nicht der Motor</translation>
    </message>
    <message>
        <source>; the voltage across the motor was not read</source>
        <translation>; die Spannung am Motor wurde nicht gelesen</translation>
    </message>
    <message>
        <source>; the voltage across the motor would tell it from a high supply</source>
        <translation>; die Spannung am Motor würde es von einer hohen Versorgung unterscheiden</translation>
    </message>
    <message>
        <source>; the {0} by {1}</source>
        <translation>; {0} um {1}</translation>
    </message>
    <message>
        <source>; two readings of about {0} V subtracted know it only to that, a channel straight across the part (drop) would settle it</source>
        <translation>; zwei Messwerte von etwa {0} V, voneinander abgezogen, sind nur so genau; ein Kanal direkt über dem Teil (Spannungsfall) würde es klären</translation>
    </message>
    <message>
        <source>; with this uncertainty a small current can&apos;t be told from none</source>
        <translation>; bei dieser Unsicherheit ist ein kleiner Strom nicht von keinem zu unterscheiden</translation>
    </message>
    <message>
        <source>; {0} is probably meant</source>
        <translation>; gemeint ist wohl {0}</translation>
    </message>
    <message>
        <source>; {0} not ruled out</source>
        <translation>; {0} nicht ausgeschlossen</translation>
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
        <source>A charging battery has more volts.</source>
        <translation>Eine ladende Batterie hat mehr Volt.</translation>
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
        <source>A flat battery has less.</source>
        <translation>Eine leere Batterie hat weniger.</translation>
    </message>
    <message>
        <source>A mark that was withdrawn still counts in what is told while recording, as the recording could not be judged anew: {0} The judgement after the stop is without it.</source>
        <translation>Eine zurückgenommene Marke zählt noch in dem, was beim Aufzeichnen gemeldet wird, da die Aufzeichnung nicht neu beurteilt werden konnte: {0} Die Beurteilung nach dem Stopp ist ohne sie.</translation>
    </message>
    <message>
        <source>A negative --scale inverts already; --invert only once.</source>
        <translation>Eine negative --scale polt schon um; --invert nur einmal.</translation>
    </message>
    <message>
        <source>A pack has none of this. Ask its maker for it again; don&apos;t unpack it.</source>
        <translation>Ein Paket hat nichts davon. Vom Ersteller noch einmal anfordern; nicht entpacken.</translation>
    </message>
    <message>
        <source>A pattern alone is no ground to replace a motor: it counts together with the complaint and with dead segments that were seen.</source>
        <translation>Ein Muster allein ist kein Grund, einen Motor zu ersetzen: es zählt zusammen mit der Beanstandung und mit gesehenen toten Stellen.</translation>
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
        <source>A relay has one coil.</source>
        <translation>Ein Relais hat eine Spule.</translation>
    </message>
    <message>
        <source>Add --assign {0}=PROFILE.CHANNEL.</source>
        <translation>--assign {0}=PROFIL.KANAL hinzufügen.</translation>
    </message>
    <message>
        <source>Add test points at its ends, or one straight across.</source>
        <translation>An seinen Enden Messpunkte hinzufügen, oder einen direkt darüber.</translation>
    </message>
    <message>
        <source>Add the coil that closes this contact.</source>
        <translation>Die Spule hinzufügen, die diesen Kontakt schließt.</translation>
    </message>
    <message>
        <source>Add the contact that this coil closes.</source>
        <translation>Den Kontakt hinzufügen, den diese Spule schließt.</translation>
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
        <source>All are simulated.</source>
        <translation>Alle sind simuliert.</translation>
    </message>
    <message>
        <source>All voltages are against this node: choose another.</source>
        <translation>Alle Spannungen gelten gegen diesen Knoten: einen anderen wählen.</translation>
    </message>
    <message>
        <source>Ammeter or clamp meter read by eye and typed by hand (generic)</source>
        <translation>Amperemeter oder Zangenamperemeter, abgelesen und von Hand getippt (allgemein)</translation>
    </message>
    <message>
        <source>Ask for it again, or take the zip.</source>
        <translation>Noch einmal anfordern, oder das Zip nehmen.</translation>
    </message>
    <message>
        <source>Ask its maker for another.</source>
        <translation>Vom Ersteller ein anderes erbitten.</translation>
    </message>
    <message>
        <source>A{0} may open by what was read, but {1}: can&apos;t tell; a meter and a clamp of a higher range would settle it.</source>
        <translation>Nach dem Gelesenen kann eine {0} auslösen, aber {1}: nicht zu sagen; Messgerät und Zange mit größerem Messbereich würden es klären.</translation>
    </message>
    <message>
        <source>Back-probe 30 and 87 from below.</source>
        <translation>Von hinten an 30 und 87 messen, von unten her.</translation>
    </message>
    <message>
        <source>Back-probe 30 and 87.</source>
        <translation>Von hinten an 30 und 87 messen.</translation>
    </message>
    <message>
        <source>Back-probe both wires.</source>
        <translation>Von hinten an beiden Leitungen messen.</translation>
    </message>
    <message>
        <source>Back-probe the feed wire.</source>
        <translation>Von hinten an der Plusleitung messen.</translation>
    </message>
    <message>
        <source>Back-probe the feed wire; the other probe on the motor&apos;s blade.</source>
        <translation>Von hinten an der Plusleitung messen; die andere Messspitze an die Flachzunge des Motors.</translation>
    </message>
    <message>
        <source>Back-probe the return wire.</source>
        <translation>Von hinten an der Minusleitung messen.</translation>
    </message>
    <message>
        <source>Back-probe the socket from below.</source>
        <translation>Von hinten am Sockel messen, von unten her.</translation>
    </message>
    <message>
        <source>Back-probe the socket.</source>
        <translation>Von hinten am Sockel messen.</translation>
    </message>
    <message>
        <source>Back-probe the wire, with a 10 MΩ meter only.</source>
        <translation>Von hinten an der Leitung messen, nur mit einem 10-MΩ-Messgerät.</translation>
    </message>
    <message>
        <source>Back-probe the wire.</source>
        <translation>Von hinten an der Leitung messen.</translation>
    </message>
    <message>
        <source>Back-probe the wire; DC volts show the mean.</source>
        <translation>Von hinten an der Leitung messen; Gleichspannung zeigt den Mittelwert.</translation>
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
        <source>Bad file descriptor</source>
        <translation>die Datei ist nicht mehr offen</translation>
    </message>
    <message>
        <source>Battery voltage at its feed wire, plugged in, and the same at the wire of the chosen speed; look at the plug&apos;s pins first.</source>
        <translation>Batteriespannung an seiner Plusleitung, gesteckt, und ebenso an der Leitung der gewählten Stufe; zuerst die Stifte des Steckers ansehen.</translation>
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
        <source>Begin one: meterlog job {0} --set work_order=NUMBER.</source>
        <translation>Eine beginnen: meterlog job {0} --set work_order=NUMBER.</translation>
    </message>
    <message>
        <source>Besides: {0}</source>
        <translation>Außerdem: {0}</translation>
    </message>
    <message>
        <source>Both are simulated.</source>
        <translation>Beide sind simuliert.</translation>
    </message>
    <message>
        <source>Both sides of the fuse with the fan on high. Find out why it opened before a new one goes in.</source>
        <translation>Beide Seiten der Sicherung, Gebläse auf höchster Stufe. Klären, warum sie auslöste, bevor eine neue hineinkommt.</translation>
    </message>
    <message>
        <source>Both sides of the fuse with the key on. Find out why it opened before a new one goes in.</source>
        <translation>Beide Seiten der Sicherung, Zündung an. Klären, warum sie auslöste, bevor eine neue hineinkommt.</translation>
    </message>
    <message>
        <source>Both test tabs of the fuse.</source>
        <translation>Beide Messpunkte der Sicherung.</translation>
    </message>
    <message>
        <source>Can&apos;t be judged: {0}</source>
        <translation>Nicht zu beurteilen: {0}</translation>
    </message>
    <message>
        <source>Can&apos;t tell how large the current was for {0} s: it was beyond the meter&apos;s range (overload). Choose a wider range.</source>
        <translation>Nicht zu sagen, wie groß der Strom {0} s lang war: er lag über dem Messbereich (Überlauf). Einen größeren Bereich wählen.</translation>
    </message>
    <message>
        <source>Can&apos;t tell whether more current flowed at speed {0}: {1} readings stand at exactly {2} A, as at the end of the range of the meter or the clamp.</source>
        <translation>Nicht zu sagen, ob auf Stufe {0} mehr Strom floss: {1} Messwerte stehen bei genau {2} A, wie am Ende des Messbereichs von Messgerät oder Zange.</translation>
    </message>
    <message>
        <source>Can&apos;t tell:</source>
        <translation>Nicht zu sagen:</translation>
    </message>
    <message>
        <source>Cannot allocate memory</source>
        <translation>kein Arbeitsspeicher frei</translation>
    </message>
    <message>
        <source>Charge it, test it under load, and measure again at the posts with the fan on high.</source>
        <translation>Laden, unter Last prüfen und an den Polen noch einmal messen, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Check `setup` under [link.hid] in the profile against the chip&apos;s data sheet.</source>
        <translation>`setup` unter [link.hid] im Profil mit dem Datenblatt des Chips vergleichen.</translation>
    </message>
    <message>
        <source>Check it with: meterlog verify</source>
        <translation>Prüfen mit: meterlog verify</translation>
    </message>
    <message>
        <source>Check name and rights.</source>
        <translation>Name und Rechte prüfen.</translation>
    </message>
    <message>
        <source>Check that it is on, its address, that speed and parity of the line are those of the profile, and that A and B are not exchanged.</source>
        <translation>Prüfen, ob es an ist, seine Adresse, ob Übertragungsrate und Parität die des Profils sind und ob A und B nicht vertauscht sind.</translation>
    </message>
    <message>
        <source>Check that it is on, that speed and parity of the line are those of the profile, and that it speaks SCPI.</source>
        <translation>Prüfen, ob es an ist, ob Übertragungsrate und Parität die des Profils sind und ob es SCPI spricht.</translation>
    </message>
    <message>
        <source>Check that the disk is there and that you may read it.</source>
        <translation>Prüfen, ob das Laufwerk da ist und ob die Leserechte reichen.</translation>
    </message>
    <message>
        <source>Check that the disk is there, has room, and that you may read it.</source>
        <translation>Prüfen, ob das Laufwerk da ist, Platz hat und lesbar ist.</translation>
    </message>
    <message>
        <source>Check that the disk is there, has room, and that you may write beside the recording.</source>
        <translation>Prüfen, ob das Laufwerk da ist, Platz hat und neben der Aufzeichnung beschreibbar ist.</translation>
    </message>
    <message>
        <source>Check that the far side runs, its address and its port number.</source>
        <translation>Prüfen, ob die Gegenseite läuft, ihre Adresse und Portnummer.</translation>
    </message>
    <message>
        <source>Check the address, and that no other program uses the instrument.</source>
        <translation>Die Adresse prüfen, und dass kein anderes Programm das Instrument benutzt.</translation>
    </message>
    <message>
        <source>Check the decimal point, the meter&apos;s range and the circuit chosen.</source>
        <translation>Dezimalkomma, Bereich des Messgeräts und gewählten Stromlauf prüfen.</translation>
    </message>
    <message>
        <source>Check the disk.</source>
        <translation>Den Datenträger prüfen.</translation>
    </message>
    <message>
        <source>Check the folder of your keys, or make the pack without a signature.</source>
        <translation>Den Ordner der Schlüssel prüfen, oder das Paket ohne Unterschrift machen.</translation>
    </message>
    <message>
        <source>Check the nodes and figures of the elements between battery and motor.</source>
        <translation>Knoten und Werte der Elemente zwischen Batterie und Motor prüfen.</translation>
    </message>
    <message>
        <source>Check the path.</source>
        <translation>Den Pfad prüfen.</translation>
    </message>
    <message>
        <source>Check the plug and the cable; the meter may have to be switched on first.</source>
        <translation>Stecker und Kabel prüfen; vielleicht muss das Messgerät zuerst eingeschaltet werden.</translation>
    </message>
    <message>
        <source>Check the plug, and that the instrument is switched on.</source>
        <translation>Den Stecker prüfen, und dass das Instrument eingeschaltet ist.</translation>
    </message>
    <message>
        <source>Check the plug, the address, and that the instrument is switched on.</source>
        <translation>Stecker und Adresse prüfen, und dass das Instrument eingeschaltet ist.</translation>
    </message>
    <message>
        <source>Check the plug, the cable and the meter&apos;s power.</source>
        <translation>Stecker, Kabel und Stromversorgung des Messgeräts prüfen.</translation>
    </message>
    <message>
        <source>Choose a folder outside it, or copy the file out of it first.</source>
        <translation>Einen Ordner außerhalb davon wählen oder die Datei vorher herauskopieren.</translation>
    </message>
    <message>
        <source>Choose a folder outside it; a recording holds nothing but itself.</source>
        <translation>Einen Ordner außerhalb wählen; eine Aufzeichnung enthält nur sich selbst.</translation>
    </message>
    <message>
        <source>Choose a folder that you may write to, on a disk with room.</source>
        <translation>Einen beschreibbaren Ordner wählen, auf einem Laufwerk mit Platz.</translation>
    </message>
    <message>
        <source>Choose another channel; for a clamp or shunt on a voltage input say which, such as --clamp {0}=10mV/A or --shunt {1}=100A/60mV, or give its factor: --scale {2}=100.</source>
        <translation>Einen anderen Kanal wählen; für Zange oder Shunt an einem Spannungseingang angeben welche, etwa --clamp {0}=10mV/A oder --shunt {1}=100A/60mV, oder den Faktor: --scale {2}=100.</translation>
    </message>
    <message>
        <source>Choose another folder, then start a new recording.</source>
        <translation>Einen anderen Ordner wählen, dann eine neue Aufzeichnung starten.</translation>
    </message>
    <message>
        <source>Choose another folder; nothing is ever written over.</source>
        <translation>Einen anderen Ordner wählen; nichts wird je überschrieben.</translation>
    </message>
    <message>
        <source>Choose another folder; recordings are never overwritten.</source>
        <translation>Einen anderen Ordner wählen; Aufzeichnungen werden nie überschrieben.</translation>
    </message>
    <message>
        <source>Choose another name, or remove {0}.</source>
        <translation>Einen anderen Namen wählen, oder {0} entfernen.</translation>
    </message>
    <message>
        <source>Choose another place, or free some space; what was there is there still.</source>
        <translation>Einen anderen Ort wählen, oder Platz schaffen; was da war, ist noch da.</translation>
    </message>
    <message>
        <source>Choose at least one.</source>
        <translation>Mindestens eines wählen.</translation>
    </message>
    <message>
        <source>Choose one first.</source>
        <translation>Zuerst einen wählen.</translation>
    </message>
    <message>
        <source>Choose one from 0.5 to below 1, such as 0.95.</source>
        <translation>Eine von 0,5 bis unter 1 wählen, etwa 0,95.</translation>
    </message>
    <message>
        <source>Clamp empty and shut: take its zero.</source>
        <translation>Zange leer und geschlossen: nullen.</translation>
    </message>
    <message>
        <source>Clamp empty and shut: take its zero. If current still flows with the fan off: relay output (87) and motor&apos;s return against the battery&apos;s negative post: 87 live with the coil off means the relay sticks; return near 0 V means the controller is shorted. {0}</source>
        <translation>Zange leer und geschlossen: nullen. Fließt bei ausgeschaltetem Gebläse immer noch Strom: Relaisausgang (87) und Minus des Motors gegen den Minuspol der Batterie: 87 unter Spannung ohne Spule heißt, das Relais klebt; Minus nahe 0 V heißt, der Regler ist durchlegiert. {0}</translation>
    </message>
    <message>
        <source>Clamp round one wire of the motor only, zeroed first.</source>
        <translation>Zange nur um eine Leitung des Motors, vorher genullt.</translation>
    </message>
    <message>
        <source>Clamp round the feed wire of the module only, zeroed first.</source>
        <translation>Zange nur um die Plusleitung des Moduls, vorher genullt.</translation>
    </message>
    <message>
        <source>Clamp: {0}</source>
        <translation>Zange: {0}</translation>
    </message>
    <message>
        <source>Close it there, or try again.</source>
        <translation>Dort schließen, oder noch einmal versuchen.</translation>
    </message>
    <message>
        <source>Close it, or wait until it is done, and look again.</source>
        <translation>Dort schließen, oder warten, bis es fertig ist, und wieder nachsehen.</translation>
    </message>
    <message>
        <source>Close other programs that use it. If there are none, this user may not open it: ask whoever administers this computer for a rule that allows it.</source>
        <translation>Andere Programme schließen, die es benutzen. Gibt es keine, darf dieser Benutzer es nicht öffnen: wer diesen Computer verwaltet, kann eine Regel dafür einrichten.</translation>
    </message>
    <message>
        <source>Close the other program, or the other window of this one.</source>
        <translation>Das andere Programm schließen, oder das andere Fenster von diesem.</translation>
    </message>
    <message>
        <source>Close the other program.</source>
        <translation>Das andere Programm schließen.</translation>
    </message>
    <message>
        <source>Close what else uses it, or ask whoever administers this computer.</source>
        <translation>Schließen, was ihn sonst benutzt, oder fragen, wer diesen Computer verwaltet.</translation>
    </message>
    <message>
        <source>Coil fuse and 86 the same, key on, and near nothing at 85.</source>
        <translation>Spulensicherung und 86 gleich, Zündung an, und an 85 fast nichts.</translation>
    </message>
    <message>
        <source>Compare the fuse in the holder with the rating in the manual (same rating and kind only); then the current on high, and at the start with a fast channel.</source>
        <translation>Die Sicherung im Halter mit dem Nennwert im Handbuch vergleichen (nur gleicher Nennwert und gleiche Art); dann der Strom auf höchster Stufe und beim Anlauf mit schnellem Kanal.</translation>
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
        <source>Connect its disk again and screen once more; the tables are as they were.</source>
        <translation>Den Datenträger wieder anschließen und noch einmal durchsehen; die Tabellen sind, wie sie waren.</translation>
    </message>
    <message>
        <source>Connection refused</source>
        <translation>Verbindung abgelehnt</translation>
    </message>
    <message>
        <source>Connection timed out</source>
        <translation>keine Antwort in der Zeit</translation>
    </message>
    <message>
        <source>Correct one of them.</source>
        <translation>Einen davon berichtigen.</translation>
    </message>
    <message>
        <source>Correct that line.</source>
        <translation>Diese Zeile berichtigen.</translation>
    </message>
    <message>
        <source>Correct them.</source>
        <translation>Berichtigen.</translation>
    </message>
    <message>
        <source>Current above its base line {0}{1} with no dropout seen and no command: {2} A on {3} A, consistent with the restart after a missed dropout of about {4}{5}. Scaled by {6}.{7}</source>
        <translation>Strom über seiner Grundlinie {0}{1}, ohne gesehenen Aussetzer und ohne Schaltung: {2} A bei {3} A, passend zum Wiederanlauf nach einem entgangenen Aussetzer von etwa {4}{5}. Maßstab: {6}.{7}</translation>
    </message>
    <message>
        <source>Current flows although the fan is commanded off: a relay that sticks, a shorted controller, or a clamp that was not zeroed.</source>
        <translation>Strom fließt, obwohl das Gebläse ausgeschaltet ist: ein klebendes Relais, ein kurzgeschlossener Regler oder eine nicht genullte Zange.</translation>
    </message>
    <message>
        <source>Data acquisition in blocks of 16-bit samples, 3 channels, 1000 rows/s (generic)</source>
        <translation>Messdatenerfassung in Blöcken von 16-Bit-Werten, 3 Kanäle, 1000 Zeilen/s (allgemein)</translation>
    </message>
    <message>
        <source>Data acquisition in blocks of 32-bit floating samples, 3 channels, 1000 rows/s (generic)</source>
        <translation>Messdatenerfassung in Blöcken von 32-Bit-Gleitkommawerten, 3 Kanäle, 1000 Zeilen/s (allgemein)</translation>
    </message>
    <message>
        <source>Dead segment</source>
        <translation>Tote Stelle</translation>
    </message>
    <message>
        <source>Dead segment{0}: {1} through the motor while {2} stood across it{3}</source>
        <translation>Tote Stelle{0}: {1} durch den Motor, während {2} an ihm anlagen{3}</translation>
    </message>
    <message>
        <source>Decision rule: guard bands on both sides (JCGM 106:2012, 8.3). Pass only where the value is within its limits by at least {0}its expanded uncertainty U (about 95 %), fail only where it is outside by more than that; in between: can&apos;t tell.</source>
        <translation>Entscheidungsregel: Sicherheitsabstand auf beiden Seiten (JCGM 106:2012, 8.3). Bestanden nur, wo der Wert mindestens {0}seine erweiterte Unsicherheit U (etwa 95 %) innerhalb seiner Grenzen liegt, nicht bestanden nur, wo er um mehr als das außerhalb liegt; dazwischen: nicht zu sagen.</translation>
    </message>
    <message>
        <source>Decision rule: simple acceptance (JCGM 106:2012, 8.2). The value alone decides, its uncertainty does not count; close to a limit a verdict may be wrong one time in two: the probability beside it says how surely the true value is within the limits.</source>
        <translation>Entscheidungsregel: einfache Annahme (JCGM 106:2012, 8.2). Der Wert allein entscheidet, seine Unsicherheit zählt nicht; nahe einer Grenze kann ein Urteil jedes zweite Mal falsch sein: die Wahrscheinlichkeit daneben sagt, wie sicher der wahre Wert innerhalb der Grenzen liegt.</translation>
    </message>
    <message>
        <source>Device or resource busy</source>
        <translation>das Gerät ist belegt</translation>
    </message>
    <message>
        <source>Did you mean {0}?</source>
        <translation>Gemeint war vielleicht {0}?</translation>
    </message>
    <message>
        <source>Did you mean {0}? </source>
        <translation>Gemeint war vielleicht {0}? </translation>
    </message>
    <message>
        <source>Dip {0}{1}: the current read {2} A between {3} A before and after; consistent with an open of about {4} that the meter averaged, not a measured zero{5}. Scaled by {6}.</source>
        <translation>Einbruch {0}{1}: der Strom zeigte {2} A, davor und danach {3} A; passend zu einer Unterbrechung von etwa {4}, die das Messgerät gemittelt hat, keine gemessene Null{5}. Maßstab: {6}.</translation>
    </message>
    <message>
        <source>Direct-current panel meter, Modbus RTU, voltage and current (generic)</source>
        <translation>Einbaumessgerät für Gleichstrom, Modbus RTU, Spannung und Strom (allgemein)</translation>
    </message>
    <message>
        <source>Directory not empty</source>
        <translation>der Ordner ist nicht leer</translation>
    </message>
    <message>
        <source>Disk quota exceeded</source>
        <translation>der zugeteilte Platz ist voll</translation>
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
        <source>EDITS NOT WHOLE: {0}</source>
        <translation>ÄNDERUNGEN NICHT VOLLSTÄNDIG: {0}</translation>
    </message>
    <message>
        <source>Each meter needs a {0} of its own.</source>
        <translation>Jedes Messgerät braucht ein eigenes: {0}.</translation>
    </message>
    <message>
        <source>Each role needs one channel.</source>
        <translation>Jede Aufgabe braucht einen Kanal.</translation>
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
        <source>Expected 0 (off) first, then rising.</source>
        <translation>Erwartet wird zuerst 0 (aus), dann steigend.</translation>
    </message>
    <message>
        <source>Expected 0 for off, or 1, 2, 3 ...</source>
        <translation>Erwartet wird 0 für Aus, oder 1, 2, 3 ...</translation>
    </message>
    <message>
        <source>Expected PROFILE@PORT, such as line-logger@/dev/ttyUSB0.</source>
        <translation>Erwartet wird PROFIL@ANSCHLUSS, etwa line-logger@/dev/ttyUSB0.</translation>
    </message>
    <message>
        <source>Expected ROLE=..., such as motor-current=... {0}</source>
        <translation>Erwartet wird AUFGABE=..., etwa motor-current=... {0}</translation>
    </message>
    <message>
        <source>Expected ROLE=PROFILE.CHANNEL, such as motor-feed=line-logger.feed.</source>
        <translation>Erwartet wird AUFGABE=PROFIL.KANAL, etwa motor-feed=line-logger.feed.</translation>
    </message>
    <message>
        <source>Expected a finite number.</source>
        <translation>Erwartet wird eine endliche Zahl.</translation>
    </message>
    <message>
        <source>Expected a number.</source>
        <translation>Erwartet wird eine Zahl.</translation>
    </message>
    <message>
        <source>Expected a table [{0}].</source>
        <translation>Erwartet wird eine Tabelle [{0}].</translation>
    </message>
    <message>
        <source>Expected a text in quotes.</source>
        <translation>Erwartet wird ein Text in Anführungszeichen.</translation>
    </message>
    <message>
        <source>Expected a whole number, 1 to {0}: how often the wire goes through.</source>
        <translation>Erwartet wird eine ganze Zahl, 1 bis {0}: wie oft die Leitung hindurchgeht.</translation>
    </message>
    <message>
        <source>Expected above 0.</source>
        <translation>Erwartet wird mehr als 0.</translation>
    </message>
    <message>
        <source>Expected above 1: a motor in order has 1.</source>
        <translation>Erwartet wird mehr als 1: ein Motor in Ordnung hat 1.</translation>
    </message>
    <message>
        <source>Expected exactly one element of the kind motor.</source>
        <translation>Erwartet wird genau ein Element der Art motor.</translation>
    </message>
    <message>
        <source>Expected one of the {0} names under [[{1}s]].</source>
        <translation>Erwartet wird einer der {0} Namen unter [[{1}s]].</translation>
    </message>
    <message>
        <source>Expected one of: {0}.</source>
        <translation>Erwartet wird eines von: {0}.</translation>
    </message>
    <message>
        <source>Expected such as 10, where the meter reads a tenth.</source>
        <translation>Erwartet wird etwa 10, wenn das Messgerät ein Zehntel liest.</translation>
    </message>
    <message>
        <source>Expected such as 100A/60mV, or its resistance such as 0.6mOhm.</source>
        <translation>Erwartet wird etwa 100A/60mV, oder sein Widerstand, etwa 0.6mOhm.</translation>
    </message>
    <message>
        <source>Expected the clamp&apos;s output, such as 10mV/A (also 1mV/A, 100mV/A).</source>
        <translation>Erwartet wird der Ausgang der Zange, etwa 10mV/A (auch 1mV/A, 100mV/A).</translation>
    </message>
    <message>
        <source>Expected the two ends of a stretch.</source>
        <translation>Erwartet werden die beiden Enden einer Strecke.</translation>
    </message>
    <message>
        <source>Expected true or false.</source>
        <translation>Erwartet wird true oder false.</translation>
    </message>
    <message>
        <source>Expected two different nodes.</source>
        <translation>Erwartet werden zwei verschiedene Knoten.</translation>
    </message>
    <message>
        <source>Expected two elements.</source>
        <translation>Erwartet werden zwei Elemente.</translation>
    </message>
    <message>
        <source>Expected {0} as {1} shows them, such as 12.43; no unit.</source>
        <translation>Erwartet wird {0}, wie {1} sie zeigt, etwa 12,43; ohne Einheit.</translation>
    </message>
    <message>
        <source>Expected {0} to {1}.</source>
        <translation>Erwartet wird {0} bis {1}.</translation>
    </message>
    <message>
        <source>Expected {0}: {1}.</source>
        <translation>Erwartet wird {0}: {1}.</translation>
    </message>
    <message>
        <source>Expected: {0}.</source>
        <translation>Erwartet wird: {0}.</translation>
    </message>
    <message>
        <source>Fan and key off before any plug is parted; leave airbag plugs (usually yellow) alone.</source>
        <translation>Gebläse und Zündung aus, bevor ein Stecker getrennt wird; Airbagstecker (meist gelb) nicht anfassen.</translation>
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
        <source>Fan on high, all plugged in, meter to the battery&apos;s negative post: battery, both sides of the main fuse, relay input (30), relay output (87), motor feed; each within 0.7 V of the battery; the fault lies before the first that falls.</source>
        <translation>Gebläse auf höchster Stufe, alles gesteckt, Messgerät gegen den Minuspol der Batterie: Batterie, beide Seiten der Hauptsicherung, Relaiseingang (30), Relaisausgang (87), Plus am Motor; jeweils höchstens 0,7 V unter der Batterie; der Fehler liegt vor dem ersten, der abfällt.</translation>
    </message>
    <message>
        <source>Fan on high, all plugged in, meter to the battery&apos;s negative post: battery, both sides of the main fuse, relay input (30), relay output (87), motor feed; each within 0.7 V of the battery; the fault lies before the first that falls. If 87 is dead: coil 86 near battery, 85 near 0 V. Move one plug at a time and mark it. A blown fuse has a cause: same rating only, never bridge it; measure the motor&apos;s current on high afterwards. {0}</source>
        <translation>Gebläse auf höchster Stufe, alles gesteckt, Messgerät gegen den Minuspol der Batterie: Batterie, beide Seiten der Hauptsicherung, Relaiseingang (30), Relaisausgang (87), Plus am Motor; jeweils höchstens 0,7 V unter der Batterie; der Fehler liegt vor dem ersten, der abfällt. Ist 87 tot: Spule 86 nahe Batterie, 85 nahe 0 V. Einen Stecker nach dem anderen bewegen und es markieren. Eine durchgebrannte Sicherung hat eine Ursache: nur gleicher Nennwert, nie überbrücken; danach den Motorstrom auf höchster Stufe messen. {0}</translation>
    </message>
    <message>
        <source>Fan on high, all plugged in, meter to the battery&apos;s negative post: ground pin of the controller below 0.3 V (more: ground wire or stud); then its request.</source>
        <translation>Gebläse auf höchster Stufe, alles gesteckt, Messgerät gegen den Minuspol der Batterie: Massestift des Reglers unter 0,3 V (mehr: Masseleitung oder Bolzen); dann seine Ansteuerung.</translation>
    </message>
    <message>
        <source>Fan on high, all plugged in, meter to the battery&apos;s negative post: ground pin of the controller below 0.3 V (more: ground wire or stud); then its request. Ground and request good and the motor&apos;s return near the feed: the controller is open. Before a new one is fitted: motor current on high below 80 % of the fuse, as a motor that draws too much kills controllers. {0}</source>
        <translation>Gebläse auf höchster Stufe, alles gesteckt, Messgerät gegen den Minuspol der Batterie: Massestift des Reglers unter 0,3 V (mehr: Masseleitung oder Bolzen); dann seine Ansteuerung. Masse und Ansteuerung gut und Minus des Motors nahe Plus: der Regler ist offen. Bevor ein neuer eingebaut wird: Motorstrom auf höchster Stufe unter 80 % der Sicherung, denn ein Motor, der zu viel zieht, zerstört Regler. {0}</translation>
    </message>
    <message>
        <source>Fan on high: measure straight across each part of the feed: fuse and holder, relay contacts (30 to 87, 0.3 V at most), plug and wire (0.1 to 0.2 V each); the largest is the place.</source>
        <translation>Gebläse auf höchster Stufe: direkt über jedem Teil der Zuleitung messen: Sicherung und Halter, Relaiskontakte (30 nach 87, höchstens 0,3 V), Stecker und Leitung (je 0,1 bis 0,2 V); der größte ist die Stelle.</translation>
    </message>
    <message>
        <source>Fan on high: measure straight across each part of the feed: fuse and holder, relay contacts (30 to 87, 0.3 V at most), plug and wire (0.1 to 0.2 V each); the largest is the place. Look for heat. Low speed hides it. {0}</source>
        <translation>Gebläse auf höchster Stufe: direkt über jedem Teil der Zuleitung messen: Sicherung und Halter, Relaiskontakte (30 nach 87, höchstens 0,3 V), Stecker und Leitung (je 0,1 bis 0,2 V); der größte ist die Stelle. Auf Hitze achten. Kleine Stufe verbirgt es. {0}</translation>
    </message>
    <message>
        <source>Fan on high: measure straight from the controller&apos;s ground pin to the battery&apos;s negative post (0.2 V, 0.3 V at most), then each joint and stud; the largest drop is the place.</source>
        <translation>Gebläse auf höchster Stufe: direkt vom Massestift des Reglers zum Minuspol der Batterie messen (0,2 V, höchstens 0,3 V), dann jede Verbindung und jeden Bolzen; der größte Spannungsfall ist die Stelle.</translation>
    </message>
    <message>
        <source>Fan on high: measure straight from the controller&apos;s ground pin to the battery&apos;s negative post (0.2 V, 0.3 V at most), then each joint and stud; the largest drop is the place. A computer on mains power can be a second ground: run it on its battery. {0}</source>
        <translation>Gebläse auf höchster Stufe: direkt vom Massestift des Reglers zum Minuspol der Batterie messen (0,2 V, höchstens 0,3 V), dann jede Verbindung und jeden Bolzen; der größte Spannungsfall ist die Stelle. Ein Rechner am Netz kann eine zweite Masse sein: mit Akku betreiben. {0}</translation>
    </message>
    <message>
        <source>Fan on the speed named: voltage across the controller and its current; see filter and intake (its air cools it), and the motor&apos;s current on high below 80 % of the fuse.</source>
        <translation>Gebläse auf der genannten Stufe: Spannung über dem Regler und sein Strom; Filter und Ansaugung ansehen (die Luft kühlt ihn), und den Motorstrom auf höchster Stufe unter 80 % der Sicherung.</translation>
    </message>
    <message>
        <source>Fan on the speed named: voltage across the controller and its current; see filter and intake (its air cools it), and the motor&apos;s current on high below 80 % of the fuse. The heat sink burns. {0}</source>
        <translation>Gebläse auf der genannten Stufe: Spannung über dem Regler und sein Strom; Filter und Ansaugung ansehen (die Luft kühlt ihn), und den Motorstrom auf höchster Stufe unter 80 % der Sicherung. Der Kühlkörper ist heiß. {0}</translation>
    </message>
    <message>
        <source>Fetch it from your backup, or take it away; a new key is made then, with another fingerprint.</source>
        <translation>Aus der Datensicherung holen, oder wegbewegen; dann wird ein neuer Schlüssel gemacht, mit einem anderen Fingerabdruck.</translation>
    </message>
    <message>
        <source>File exists</source>
        <translation>die Datei gibt es schon</translation>
    </message>
    <message>
        <source>File name too long</source>
        <translation>der Dateiname ist zu lang</translation>
    </message>
    <message>
        <source>File too large</source>
        <translation>die Datei ist zu groß für das Laufwerk</translation>
    </message>
    <message>
        <source>Free some space or choose another disk, then start a new recording.</source>
        <translation>Platz schaffen oder ein anderes Laufwerk wählen, dann eine neue Aufzeichnung starten.</translation>
    </message>
    <message>
        <source>Free some space or choose another folder; what was there is there still.</source>
        <translation>Platz schaffen oder einen anderen Ordner wählen; was da war, ist noch da.</translation>
    </message>
    <message>
        <source>Free some space.</source>
        <translation>Platz schaffen.</translation>
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
        <source>Give 0 for off, or 1, 2, 3 ...</source>
        <translation>0 für Aus angeben, oder 1, 2, 3 ...</translation>
    </message>
    <message>
        <source>Give a file in it.</source>
        <translation>Eine Datei darin angeben.</translation>
    </message>
    <message>
        <source>Give a folder that holds recordings.</source>
        <translation>Einen Ordner mit Aufzeichnungen angeben.</translation>
    </message>
    <message>
        <source>Give a folder, or an address whose package for fsspec is installed.</source>
        <translation>Einen Ordner angeben, oder eine Adresse, deren Paket für fsspec installiert ist.</translation>
    </message>
    <message>
        <source>Give a time within it.</source>
        <translation>Eine Zeit darin angeben.</translation>
    </message>
    <message>
        <source>Give all 40 digits, as they stand on the pack&apos;s pages, in double quotes.</source>
        <translation>Alle 40 Stellen angeben, wie sie auf den Seiten des Pakets stehen, in Anführungszeichen.</translation>
    </message>
    <message>
        <source>Give all 40 digits, as they stand on the pack&apos;s pages.</source>
        <translation>Alle 40 Stellen angeben, wie sie auf den Seiten des Pakets stehen.</translation>
    </message>
    <message>
        <source>Give another file, or put this one right in an editor.</source>
        <translation>Eine andere Datei angeben, oder diese mit einem Editor richtigstellen.</translation>
    </message>
    <message>
        <source>Give another value, or leave it as it is.</source>
        <translation>Einen anderen Wert angeben, oder ihn lassen, wie er ist.</translation>
    </message>
    <message>
        <source>Give digits from {0} to {1}, in {2}.</source>
        <translation>Ziffern von {0} bis {1} angeben, in {2}.</translation>
    </message>
    <message>
        <source>Give each channel one role.</source>
        <translation>Jedem Kanal eine Aufgabe geben.</translation>
    </message>
    <message>
        <source>Give each element that can fail its ways with their odds.</source>
        <translation>Jedem Element, das ausfallen kann, seine Arten mit ihren Gewichten geben.</translation>
    </message>
    <message>
        <source>Give each reading and each sign a number of its own.</source>
        <translation>Jeder Messung und jedem Zeichen eine eigene Nummer geben.</translation>
    </message>
    <message>
        <source>Give it without a unit, such as 12.5.</source>
        <translation>Ohne Einheit angeben, etwa 12,5.</translation>
    </message>
    <message>
        <source>Give it, such as --part FM-20.</source>
        <translation>Sie angeben, etwa --part FM-20.</translation>
    </message>
    <message>
        <source>Give its port, or choose a profile with dialect = &quot;typed&quot;.</source>
        <translation>Seinen Anschluss angeben, oder ein Profil mit dialect = &quot;typed&quot; wählen.</translation>
    </message>
    <message>
        <source>Give its volts.</source>
        <translation>Ihre Volt angeben.</translation>
    </message>
    <message>
        <source>Give one after the =.</source>
        <translation>Einen hinter dem = angeben.</translation>
    </message>
    <message>
        <source>Give one of them another name.</source>
        <translation>Einer davon einen anderen Namen geben.</translation>
    </message>
    <message>
        <source>Give one that was kept by itself (meterlog circuit --save).</source>
        <translation>Eine angeben, die einzeln gesichert wurde (meterlog circuit --save).</translation>
    </message>
    <message>
        <source>Give one that was kept by itself on the Circuit page.</source>
        <translation>Eine angeben, die auf der Seite Stromlauf einzeln gesichert wurde.</translation>
    </message>
    <message>
        <source>Give seconds from the recording&apos;s beginning: 12.3.</source>
        <translation>Sekunden ab dem Beginn der Aufzeichnung angeben: 12,3.</translation>
    </message>
    <message>
        <source>Give the channels other names.</source>
        <translation>Den Kanälen andere Namen geben.</translation>
    </message>
    <message>
        <source>Give the coil and its contact the same word.</source>
        <translation>Der Spule und ihrem Kontakt dasselbe Wort geben.</translation>
    </message>
    <message>
        <source>Give the file of a job card that you may read.</source>
        <translation>Die Datei einer lesbaren Auftragskarte angeben.</translation>
    </message>
    <message>
        <source>Give the folder of one recording.</source>
        <translation>Den Ordner einer Aufzeichnung angeben.</translation>
    </message>
    <message>
        <source>Give the folder&apos;s name.</source>
        <translation>Den Namen des Ordners angeben.</translation>
    </message>
    <message>
        <source>Give the last part of a recording that went on elsewhere.</source>
        <translation>Den letzten Teil einer Aufzeichnung angeben, die anderswo weiterging.</translation>
    </message>
    <message>
        <source>Give the lower of the two as min_a.</source>
        <translation>Den kleineren von beiden als min_a angeben.</translation>
    </message>
    <message>
        <source>Give the pack&apos;s folder or zip.</source>
        <translation>Den Ordner oder das Zip des Pakets angeben.</translation>
    </message>
    <message>
        <source>Give the part that this one goes on with.</source>
        <translation>Den Teil angeben, den dieser fortsetzt.</translation>
    </message>
    <message>
        <source>Give the passphrase.</source>
        <translation>Das Kennwort angeben.</translation>
    </message>
    <message>
        <source>Give the picture another name; nothing was changed on the card.</source>
        <translation>Dem Bild einen anderen Namen geben; an der Karte wurde nichts geändert.</translation>
    </message>
    <message>
        <source>Give the port&apos;s name itself, or socket://HOST:PORT.</source>
        <translation>Den Namen des Anschlusses selbst angeben, oder socket://HOST:PORT.</translation>
    </message>
    <message>
        <source>Give the recording.</source>
        <translation>Die Aufzeichnung angeben.</translation>
    </message>
    <message>
        <source>Give the time of one of them in full.</source>
        <translation>Die Zeit von einem davon vollständig angeben.</translation>
    </message>
    <message>
        <source>Give the {0} that meterlog screen has written, or its folder.</source>
        <translation>Die Datei {0} angeben, die meterlog screen geschrieben hat, oder ihren Ordner.</translation>
    </message>
    <message>
        <source>Give true or false.</source>
        <translation>true oder false angeben.</translation>
    </message>
    <message>
        <source>Give two different recordings; a copy says nothing new.</source>
        <translation>Zwei verschiedene Aufzeichnungen angeben; eine Kopie sagt nichts Neues.</translation>
    </message>
    <message>
        <source>Give year-month-day, such as 2026-11-29, or only year-month or the year.</source>
        <translation>Jahr-Monat-Tag angeben, etwa 2026-11-29, oder nur Jahr-Monat oder das Jahr.</translation>
    </message>
    <message>
        <source>Go to another folder (cd), or give whole paths, and run it again.</source>
        <translation>In einen anderen Ordner gehen (cd) oder ganze Pfade angeben, und es noch einmal starten.</translation>
    </message>
    <message>
        <source>Good feed, ground and command at its plug, plugged in; look at the plug&apos;s pins first; the motor&apos;s current below 80 % of the fuse before a new one goes in.</source>
        <translation>Plus, Masse und Ansteuerung an seinem Stecker in Ordnung, gesteckt; zuerst die Stifte des Steckers ansehen; Motorstrom unter 80 % der Sicherung, bevor ein neuer hineinkommt.</translation>
    </message>
    <message>
        <source>Good ground and command at its plug, plugged in; look at the plug&apos;s pins first; the motor&apos;s current below 80 % of the fuse before a new one goes in.</source>
        <translation>Masse und Ansteuerung an seinem Stecker in Ordnung, gesteckt; zuerst die Stifte des Steckers ansehen; Motorstrom unter 80 % der Sicherung, bevor ein neuer hineinkommt.</translation>
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
        <source>HOLD is on: what it shows is no measurement</source>
        <translation>HOLD ist an: die Anzeige ist kein Messwert</translation>
    </message>
    <message>
        <source>Hand-held multimeter with frames of display segments behind a HID bridge (generic)</source>
        <translation>Handmultimeter mit Rahmen von Anzeigesegmenten hinter einem HID-Adapter (allgemein)</translation>
    </message>
    <message>
        <source>Hand-held multimeter with frames of display segments, direct current (generic)</source>
        <translation>Handmultimeter mit Rahmen von Anzeigesegmenten, Gleichstrom (allgemein)</translation>
    </message>
    <message>
        <source>Hand-held multimeter with frames of display segments, direct voltage (generic)</source>
        <translation>Handmultimeter mit Rahmen von Anzeigesegmenten, Gleichspannung (allgemein)</translation>
    </message>
    <message>
        <source>High-side linear controller, relay fed by the ignition, 12 V</source>
        <translation>Plusseitiger Linearregler, Relais von der Zündung versorgt, 12 V</translation>
    </message>
    <message>
        <source>High-side linear controller, relay fed by the ignition, 24 V</source>
        <translation>Plusseitiger Linearregler, Relais von der Zündung versorgt, 24 V</translation>
    </message>
    <message>
        <source>Hold SELECT or RANGE while switching on, until APO is gone from the display.</source>
        <translation>SELECT oder RANGE beim Einschalten halten, bis APO in der Anzeige verschwindet.</translation>
    </message>
    <message>
        <source>Hold SELECT while switching on.</source>
        <translation>SELECT beim Einschalten halten.</translation>
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
        <source>If nobody had it, make it yours: chmod 600 {0}; else take it away, and a new key is made.</source>
        <translation>Hatte ihn niemand, allein sich selbst Rechte geben: chmod 600 {0}; sonst wegbewegen, dann wird ein neuer Schlüssel gemacht.</translation>
    </message>
    <message>
        <source>If nothing is meant to pulse it, a buzzing relay or contact looks the same.</source>
        <translation>Soll nichts sie takten, sieht ein flatterndes Relais oder ein flatternder Kontakt gleich aus.</translation>
    </message>
    <message>
        <source>If the fan fails only at times, record it for long with the complaint there, and tap and wiggle while it records (meterlog record).</source>
        <translation>Fällt das Gebläse nur zeitweise aus, lange mit vorhandenem Fehler aufzeichnen und dabei klopfen und wackeln.</translation>
    </message>
    <message>
        <source>Import the tables again.</source>
        <translation>Die Tabellen noch einmal einlesen.</translation>
    </message>
    <message>
        <source>Input/output error</source>
        <translation>Ein-/Ausgabefehler des Laufwerks</translation>
    </message>
    <message>
        <source>Install it, on Debian and the like by `sudo apt install libusb-1.0-0`.</source>
        <translation>Installieren, unter Debian und Verwandten mit `sudo apt install libusb-1.0-0`.</translation>
    </message>
    <message>
        <source>Invalid argument</source>
        <translation>ungültige Angabe</translation>
    </message>
    <message>
        <source>Is a directory</source>
        <translation>das ist ein Ordner</translation>
    </message>
    <message>
        <source>It belongs to a {0}: leave it out.</source>
        <translation>Es gehört zu {0}: weglassen.</translation>
    </message>
    <message>
        <source>It belongs to root alone. Ask whoever administers this computer for a rule that gives it to the group {0}; until then `sudo chmod a+rw {1}` holds until it is unplugged.</source>
        <translation>Er gehört root allein. Wer diesen Computer verwaltet, kann eine Regel einrichten, die ihn der Gruppe {0} gibt; bis dahin gilt `sudo chmod a+rw {1}`, bis er abgezogen wird.</translation>
    </message>
    <message>
        <source>It came back upon taps on the motor, beyond chance</source>
        <translation>Er kam auf Klopfen an den Motor zurück, mehr als durch Zufall</translation>
    </message>
    <message>
        <source>It can still be reviewed by itself.</source>
        <translation>Für sich allein lässt sie sich noch beurteilen.</translation>
    </message>
    <message>
        <source>It draws {0} {1} ({2}), beyond the uncertainty.</source>
        <translation>Es zieht {0} {1} ({2}), über die Unsicherheit hinaus.</translation>
    </message>
    <message>
        <source>It goes on from another recording: what came before is not in it.</source>
        <translation>Sie setzt eine andere Aufzeichnung fort: Was davor war, ist nicht darin.</translation>
    </message>
    <message>
        <source>It had up to {0} V across it, and draws more than at {1} V</source>
        <translation>An ihm lagen bis zu {0} V an, und er zieht mehr als bei {1} V</translation>
    </message>
    <message>
        <source>It is damaged or was cut; ask for it again.</source>
        <translation>Es ist beschädigt oder wurde abgeschnitten; noch einmal anfordern.</translation>
    </message>
    <message>
        <source>It is damaged; ask for it again.</source>
        <translation>Es ist beschädigt; noch einmal anfordern.</translation>
    </message>
    <message>
        <source>It is not {0}</source>
        <translation>Es ist nicht {0}</translation>
    </message>
    <message>
        <source>It is still being recorded: open it again when that has ended.</source>
        <translation>Sie wird noch aufgezeichnet: Wieder öffnen, wenn das beendet ist.</translation>
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
        <source>It was begun in the same second as the recording that is called after the repair ({0}): they may be one run.</source>
        <translation>Sie begann in derselben Sekunde wie die Aufzeichnung, die nach der Reparatur genannt wird ({0}): es kann ein Lauf sein.</translation>
    </message>
    <message>
        <source>It was begun {0}, after the recording that is called after the repair ({1}): they may be the wrong way round, or a clock was wrong.</source>
        <translation>Sie begann {0}, nach der Aufzeichnung, die als nach der Reparatur bezeichnet ist ({1}): sie können vertauscht sein, oder eine Uhr ging falsch.</translation>
    </message>
    <message>
        <source>It was never sealed: nothing shows that it was not changed since.</source>
        <translation>Sie wurde nie versiegelt: nichts zeigt, dass sie seither nicht geändert wurde.</translation>
    </message>
    <message>
        <source>It was never sealed: the Recordings page seals what was cut off.</source>
        <translation>Sie wurde nie versiegelt: Die Seite Aufzeichnungen versiegelt, was abgerissen ist.</translation>
    </message>
    <message>
        <source>It was packed by {0}, and {1} is here: its packed bytes can&apos;t be compared.</source>
        <translation>Sie wurde von {0} gepackt, hier ist {1}: ihre gepackten Bytes lassen sich nicht vergleichen.</translation>
    </message>
    <message>
        <source>It was seen at one marked speed alone, and what was drawn at speed {0} is what speed {1} should draw: a wrong mark looks the same</source>
        <translation>Es war nur bei einer markierten Stufe so, und was auf Stufe {0} floss, soll Stufe {1} ziehen: eine falsche Markierung sieht genauso aus</translation>
    </message>
    <message>
        <source>It went once and did not come back before the recording ended: a fan that was switched off without a mark looks the same</source>
        <translation>Er ging einmal weg und kam vor dem Ende der Aufzeichnung nicht wieder: ein Gebläse, das ohne Markierung ausgeschaltet wurde, sieht genauso aus</translation>
    </message>
    <message>
        <source>It went once, and by itself: a fan that was switched off and on again without a mark looks the same</source>
        <translation>Er ging einmal und von selbst weg: ein Gebläse, das ohne Markierung aus- und wieder eingeschaltet wurde, sieht genauso aus</translation>
    </message>
    <message>
        <source>Its entries are there; seal it again at the next start.</source>
        <translation>Ihre Einträge sind da; beim nächsten Start noch einmal versiegeln.</translation>
    </message>
    <message>
        <source>Its faults: {0}. Add it there with its own odds.</source>
        <translation>Seine Fehler: {0}. Ihn dort mit eigenem Gewicht eintragen.</translation>
    </message>
    <message>
        <source>Its figures: {0}.</source>
        <translation>Seine Werte: {0}.</translation>
    </message>
    <message>
        <source>Its lists are signed by the key {0}</source>
        <translation>Die Listen sind mit dem Schlüssel {0} unterschrieben</translation>
    </message>
    <message>
        <source>Its readings are those of the recording after the repair, to the last digit: they are one run, and nothing is shown of a repair.</source>
        <translation>Ihre Messwerte sind bis auf die letzte Stelle die der Aufzeichnung nach der Reparatur: es ist ein Lauf, und von einer Reparatur ist nichts gezeigt.</translation>
    </message>
    <message>
        <source>Its supply and ground good, and still no command at its own plug: last in the order of likelihood.</source>
        <translation>Seine Versorgung und Masse in Ordnung und trotzdem keine Ansteuerung am eigenen Stecker: der Wahrscheinlichkeit nach zuletzt.</translation>
    </message>
    <message>
        <source>Its ways: {0}.</source>
        <translation>Seine Arten: {0}.</translation>
    </message>
    <message>
        <source>Join the feed to the one post, the return and the ground to the other.</source>
        <translation>Das Plus mit dem einen Pol verbinden, Minus und Masse mit dem anderen.</translation>
    </message>
    <message>
        <source>Join this part of the circuit to the rest.</source>
        <translation>Diesen Teil des Stromkreises mit dem Rest verbinden.</translation>
    </message>
    <message>
        <source>Judge it again with a shorter min_dwell_s in the limits (review --limits), down to a few readings: then it is told when each was and on which side.</source>
        <translation>Noch einmal mit kürzerem min_dwell_s in den Grenzen beurteilen (review --limits), bis hinab zu wenigen Messwerten: dann wird gesagt, wann jeder war und auf welcher Seite.</translation>
    </message>
    <message>
        <source>Judge it again with a shorter min_dwell_s in the limits (review --limits), down to a few readings: then it is told when each was and on which side. Shake the leads and the plug one by one meanwhile, and tap the motor lightly; mark each. {0}</source>
        <translation>Noch einmal mit kürzerem min_dwell_s in den Grenzen beurteilen (review --limits), bis hinab zu wenigen Messwerten: dann wird gesagt, wann jeder war und auf welcher Seite. Dabei Leitungen und Stecker einzeln rütteln und leicht auf den Motor klopfen; jedes markieren. {0}</translation>
    </message>
    <message>
        <source>Keep fingers and leads away from the moving wheel.</source>
        <translation>Finger und Leitungen weg vom drehenden Rad.</translation>
    </message>
    <message>
        <source>Keep one under another name.</source>
        <translation>Eine unter einem anderen Namen sichern.</translation>
    </message>
    <message>
        <source>Key off: turn the wheel by hand: rub, noise, stiffness? Look at the plug for heat and at the case drain for water.</source>
        <translation>Zündung aus: das Rad von Hand drehen: Schleifen, Geräusch, schwer? Den Stecker auf Hitze ansehen und den Ablauf auf Wasser.</translation>
    </message>
    <message>
        <source>Key off: turn the wheel by hand: rub, noise, stiffness? Look at the plug for heat and at the case drain for water. Then the current on high at the same voltage with filter and housing as in use: below 80 % of the fuse, and within a tenth of a known good motor. Fit no new controller beside a motor that draws too much. {0} {1}</source>
        <translation>Zündung aus: das Rad von Hand drehen: Schleifen, Geräusch, schwer? Den Stecker auf Hitze ansehen und den Ablauf auf Wasser. Dann der Strom auf höchster Stufe bei gleicher Spannung, mit Filter und Gehäuse wie im Betrieb: unter 80 % der Sicherung und höchstens ein Zehntel neben einem als gut bekannten Motor. Keinen neuen Regler neben einen Motor einbauen, der zu viel zieht. {0} {1}</translation>
    </message>
    <message>
        <source>Key off: turn the wheel by hand: stuck or stiff: motor or something in the housing.</source>
        <translation>Zündung aus: das Rad von Hand drehen: fest oder schwer: Motor oder etwas im Gehäuse.</translation>
    </message>
    <message>
        <source>Key off: turn the wheel by hand: stuck or stiff: motor or something in the housing. Free: measure again on high from rest. On low a held rotor draws little more than usual, so judge on high, and briefly. {0} {1}</source>
        <translation>Zündung aus: das Rad von Hand drehen: fest oder schwer: Motor oder etwas im Gehäuse. Frei: auf höchster Stufe aus dem Stand noch einmal messen. Auf kleiner Stufe zieht ein blockierter Läufer kaum mehr als sonst, also auf höchster beurteilen, und kurz. {0} {1}</translation>
    </message>
    <message>
        <source>Known are {0}.</source>
        <translation>Bekannt sind {0}.</translation>
    </message>
    <message>
        <source>Known are: {0}.</source>
        <translation>Bekannt sind: {0}.</translation>
    </message>
    <message>
        <source>Leave --key out, or give the pack.</source>
        <translation>--key weglassen, oder das Paket angeben.</translation>
    </message>
    <message>
        <source>Leave --{0} out, or see whether it is the right meter.</source>
        <translation>--{0} weglassen, oder nachsehen, ob es das richtige Messgerät ist.</translation>
    </message>
    <message>
        <source>Leave it out, or make the point a current.</source>
        <translation>Weglassen, oder den Punkt zu einem Strom machen.</translation>
    </message>
    <message>
        <source>Leave it out, or put a test point there.</source>
        <translation>Weglassen, oder dort einen Messpunkt setzen.</translation>
    </message>
    <message>
        <source>Leave it out, or use it.</source>
        <translation>Weglassen, oder benutzen.</translation>
    </message>
    <message>
        <source>Leave it out: it says nothing of this vehicle.</source>
        <translation>Weglassen: sie sagt nichts über dieses Fahrzeug.</translation>
    </message>
    <message>
        <source>Leave one of the two tables.</source>
        <translation>Eine der beiden Tabellen weglassen.</translation>
    </message>
    <message>
        <source>Leave one of the two.</source>
        <translation>Eines von beiden weglassen.</translation>
    </message>
    <message>
        <source>Leave out --turns.</source>
        <translation>--turns weglassen.</translation>
    </message>
    <message>
        <source>Leave out --{0}, or give the channel another role.</source>
        <translation>--{0} weglassen, oder dem Kanal eine andere Aufgabe geben.</translation>
    </message>
    <message>
        <source>Leave out --{0}; for several turns through a clamp meter say --turns alone.</source>
        <translation>--{0} weglassen; für mehrere Windungen durch ein Zangenamperemeter nur --turns angeben.</translation>
    </message>
    <message>
        <source>Leave the fingerprint empty.</source>
        <translation>Den Fingerabdruck leer lassen.</translation>
    </message>
    <message>
        <source>Leave the passphrase out.</source>
        <translation>Das Kennwort weglassen.</translation>
    </message>
    <message>
        <source>Let an element end there, or leave it out.</source>
        <translation>Ein Element dort enden lassen, oder ihn weglassen.</translation>
    </message>
    <message>
        <source>Listed and not attached, so not checked here: {0}. Check the whole pack for them.</source>
        <translation>Aufgeführt und nicht angehängt, hier also nicht geprüft: {0}. Dafür das ganze Paket prüfen.</translation>
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
        <source>Low-side linear transistor controller with a second relay for high, both fed by the ignition, 12 V</source>
        <translation>Masseseitiger linearer Transistorregler mit zweitem Relais für die höchste Stufe, beide von der Zündung versorgt, 12 V</translation>
    </message>
    <message>
        <source>Low-side linear transistor controller with a second relay for high, both fed by the ignition, 24 V</source>
        <translation>Masseseitiger linearer Transistorregler mit zweitem Relais für die höchste Stufe, beide von der Zündung versorgt, 24 V</translation>
    </message>
    <message>
        <source>Low-side linear transistor controller, four-wire plug, relay fed by the ignition, 12 V</source>
        <translation>Masseseitiger linearer Transistorregler, vierpoliger Stecker, Relais von der Zündung versorgt, 12 V</translation>
    </message>
    <message>
        <source>Low-side linear transistor controller, four-wire plug, relay fed by the ignition, 24 V</source>
        <translation>Masseseitiger linearer Transistorregler, vierpoliger Stecker, Relais von der Zündung versorgt, 24 V</translation>
    </message>
    <message>
        <source>Make an edit first.</source>
        <translation>Zuerst etwas ändern.</translation>
    </message>
    <message>
        <source>Make it from a shorter recording of the same fan.</source>
        <translation>Es aus einer kürzeren Aufzeichnung desselben Gebläses erstellen.</translation>
    </message>
    <message>
        <source>Make it yours alone: chmod 700 {0}</source>
        <translation>Allein sich selbst Rechte geben: chmod 700 {0}</translation>
    </message>
    <message>
        <source>Make one with --as-template.</source>
        <translation>Eine mit --as-template anlegen.</translation>
    </message>
    <message>
        <source>Make room or choose another disk, and enter it again.</source>
        <translation>Platz schaffen oder ein anderes Laufwerk wählen und noch einmal eingeben.</translation>
    </message>
    <message>
        <source>Make the edit anew by what is there.</source>
        <translation>Die Änderung neu machen, nach dem, was da ist.</translation>
    </message>
    <message>
        <source>Mark something first.</source>
        <translation>Zuerst etwas markieren.</translation>
    </message>
    <message>
        <source>Measure again with feed, return and current of the motor recorded.</source>
        <translation>Noch einmal messen, mit Plus, Minus und Strom des Motors aufgezeichnet.</translation>
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
        <source>Measured with the same {0}: its gain error is taken as common, so that it cancels in differences; digits, zero and scatter do not.</source>
        <translation>Mit demselben Messgerät gemessen ({0}): sein Verstärkungsfehler gilt als gemeinsam und fällt in Unterschieden weg; Stellen, Nullpunkt und Streuung nicht.</translation>
    </message>
    <message>
        <source>Medium cabin fan, 12 V, four speeds, ground-side controller</source>
        <translation>Mittleres Innenraumgebläse, 12 V, vier Stufen, Regler auf der Masseseite</translation>
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
        <source>Move it beside that one.</source>
        <translation>Daneben verschieben.</translation>
    </message>
    <message>
        <source>Move the file away: the card and all recordings stay, and can be chosen anew.</source>
        <translation>Die Datei wegbewegen: Karte und alle Aufzeichnungen bleiben und lassen sich neu zuordnen.</translation>
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
        <source>Name a wire, a connection or the motor.</source>
        <translation>Eine Leitung, eine Verbindung oder den Motor nennen.</translation>
    </message>
    <message>
        <source>Name one node for each, in this order.</source>
        <translation>Für jedes einen Knoten nennen, in dieser Reihenfolge.</translation>
    </message>
    <message>
        <source>Name one of the two otherwise.</source>
        <translation>Einen der beiden anders nennen.</translation>
    </message>
    <message>
        <source>Name one of them: {0}.</source>
        <translation>Eines davon nennen: {0}.</translation>
    </message>
    <message>
        <source>Name the element that the clamp is round.</source>
        <translation>Das Element nennen, um das die Zange liegt.</translation>
    </message>
    <message>
        <source>Name the file of a profile: a few pages of text.</source>
        <translation>Die Datei eines Profils angeben: ein paar Seiten Text.</translation>
    </message>
    <message>
        <source>Name the file with letters, digits, blanks and - _ . + only.</source>
        <translation>Die Datei nur mit Buchstaben, Ziffern, Leerzeichen und - _ . + benennen.</translation>
    </message>
    <message>
        <source>Names of {0} must differ.</source>
        <translation>Namen müssen verschieden sein ({0}).</translation>
    </message>
    <message>
        <source>Near nothing at the controller&apos;s ground pin, plugged in.</source>
        <translation>Am Massestift des Reglers fast nichts, gesteckt.</translation>
    </message>
    <message>
        <source>Near nothing at the wire of the chosen speed, and at the switch&apos;s ground wire; look at the plug&apos;s pins first.</source>
        <translation>An der Leitung der gewählten Stufe und an der Masseleitung des Schalters fast nichts; zuerst die Stifte des Steckers ansehen.</translation>
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
        <source>No commanded speed was recorded: {0} speed change(s) were found in the current and accepted as commands, labelled by order of current (1 the weakest seen, 0 off). Whether the fan was really asked for these speeds nobody has recorded; a change of the supply, such as the engine&apos;s start, can look like one of speed.</source>
        <translation>Keine geschaltete Stufe aufgezeichnet: {0} Stufenwechsel wurden im Strom gefunden und als Schaltungen übernommen, nach der Größe des Stroms bezeichnet (1 die schwächste gesehene, 0 aus). Ob das Gebläse wirklich so geschaltet wurde, hat niemand aufgezeichnet; eine Änderung der Versorgung, etwa der Start des Fahrzeugmotors, kann wie ein Stufenwechsel aussehen.</translation>
    </message>
    <message>
        <source>No current</source>
        <translation>Kein Strom</translation>
    </message>
    <message>
        <source>No current for {0} s with no command recorded: whether the fan was asked to run then is not known.</source>
        <translation>Kein Strom für {0} s ohne aufgezeichnete Schaltung: ob das Gebläse da laufen sollte, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>No current was read at any time: a plug that is off, leads that are off or a clamp that is not on the wire look the same</source>
        <translation>Zu keiner Zeit wurde ein Strom abgelesen: ein abgezogener Stecker, abgefallene Leitungen oder eine Zange, die nicht um die Leitung liegt, sehen genauso aus</translation>
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
        <source>No device found</source>
        <translation>Kein Gerät gefunden</translation>
    </message>
    <message>
        <source>No difference beyond the uncertainty is seen {0}{1}.</source>
        <translation>Kein Unterschied über die Unsicherheit hinaus {0}{1}.</translation>
    </message>
    <message>
        <source>No difference from the new part is seen at speed {0}, where the current of this run is beyond its limit: the old part is not shown to be the cause. The limits, the marks of the speeds or the conditions are to be doubted.</source>
        <translation>Bei Stufe {0}, wo der Strom dieses Laufs jenseits seines Grenzwerts liegt, ist kein Unterschied zum neuen Teil zu sehen: Dass das alte Teil die Ursache ist, ist damit nicht gezeigt. Zu bezweifeln sind die Grenzwerte, die Markierungen der Stufen oder die Bedingungen.</translation>
    </message>
    <message>
        <source>No filter was fitted: more air moves, and more current flows</source>
        <translation>Kein Filter war eingebaut: mehr Luft bewegt sich, und mehr Strom fließt</translation>
    </message>
    <message>
        <source>No found steps were accepted as commands: {0}.</source>
        <translation>Keine gefundenen Stufen wurden als Schaltungen übernommen: {0}.</translation>
    </message>
    <message>
        <source>No instrument is known to be the same on both sides (by its serial number): all its errors count in full in the difference.</source>
        <translation>Von keinem Messgerät ist bekannt, dass es auf beiden Seiten dasselbe ist (nach seiner Seriennummer): alle seine Fehler zählen im Unterschied voll.</translation>
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
        <source>No motor figures: {0}.</source>
        <translation>Keine Kennwerte des Motors: {0}.</translation>
    </message>
    <message>
        <source>No motor-current channel: nothing can be said about the motor.</source>
        <translation>Kein Kanal für den Motorstrom: über den Motor ist nichts zu sagen.</translation>
    </message>
    <message>
        <source>No reading of the current{0} from {1} s to {2} s: {3} showed 0 while it changed its measuring range; what the motor did meanwhile is not known. Lock the range and measure again.</source>
        <translation>Kein Messwert des Stroms{0} von {1} s bis {2} s: {3} zeigte 0, während der Messbereich wechselte; was der Motor dabei tat, ist nicht bekannt. Den Bereich fest einstellen und noch einmal messen.</translation>
    </message>
    <message>
        <source>No reading showed a dropout itself</source>
        <translation>Kein Messwert zeigte selbst einen Aussetzer</translation>
    </message>
    <message>
        <source>No regular ripple stands out in {0} A: the motor does not turn, its ripple is too small for this clamp and range, or the clamp is too slow to show it.</source>
        <translation>Keine regelmäßige Welligkeit hebt sich bei {0} A ab: der Motor dreht nicht, seine Welligkeit ist für diese Zange und diesen Bereich zu klein, oder die Zange ist zu langsam dafür.</translation>
    </message>
    <message>
        <source>No ripple although {0} A flow: consistent with a rotor that does not turn. A clamp too slow to show ripple would look the same.</source>
        <translation>Keine Welligkeit, obwohl {0} A fließen: passend zu einem Läufer, der nicht dreht. Eine für Welligkeit zu langsame Zange sähe gleich aus.</translation>
    </message>
    <message>
        <source>No space left on device</source>
        <translation>auf dem Laufwerk ist kein Platz mehr</translation>
    </message>
    <message>
        <source>No speed was recorded; steps found in the current are taken for commands by review --accept-steps.</source>
        <translation>Keine Stufe wurde aufgezeichnet; im Strom gefundene Stufen werden mit review --accept-steps als Schaltungen genommen.</translation>
    </message>
    <message>
        <source>No start from rest was recorded: nothing is said of the start-up current.</source>
        <translation>Kein Anlauf aus dem Stand aufgezeichnet: zum Anlaufstrom ist nichts gesagt.</translation>
    </message>
    <message>
        <source>No steady running of a quarter of a second, evenly read and without a break, to look at the ripple.</source>
        <translation>Kein ruhiger Lauf von einer Viertelsekunde, gleichmäßig und ohne Lücke gelesen, um die Welligkeit anzusehen.</translation>
    </message>
    <message>
        <source>No such device</source>
        <translation>dieses Gerät gibt es nicht</translation>
    </message>
    <message>
        <source>No such file or directory</source>
        <translation>Datei oder Ordner gibt es nicht</translation>
    </message>
    <message>
        <source>No zero was taken of {0}, which is read by a clamp: it may be off by some tenths of an ampere, which the uncertainties do not hold. With the clamp empty and shut, take one (z, or --take-zero {1}).</source>
        <translation>Für {0}, mit einer Zange gemessen, wurde kein Nullpunkt genommen: es kann um einige Zehntel Ampere falsch sein, was die Unsicherheiten nicht enthalten. Bei leerer, geschlossener Zange einen nehmen (Z).</translation>
    </message>
    <message>
        <source>No {0} {1} in this recording.</source>
        <translation>Kein {0} {1} in dieser Aufzeichnung.</translation>
    </message>
    <message>
        <source>Nobody stated {0}: the comparison holds only if it was the same.</source>
        <translation>Niemand hat angegeben: {0}; der Vergleich gilt nur, wenn es gleich war.</translation>
    </message>
    <message>
        <source>Not a directory</source>
        <translation>das ist kein Ordner</translation>
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
        <source>Not signed: the checksums agree with each other, but nothing says who made it.</source>
        <translation>Nicht unterschrieben: die Prüfsummen stimmen miteinander überein, aber nichts sagt, wer es gemacht hat.</translation>
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
        <source>Not tried in this part: speed {0}.</source>
        <translation>In diesem Teil nicht versucht: Stufe {0}.</translation>
    </message>
    <message>
        <source>Not tried: speed {0}.</source>
        <translation>Nicht versucht: Stufe {0}.</translation>
    </message>
    <message>
        <source>Note the rhythm, the controller&apos;s temperature and the request; turn the wheel by hand (key off): does it rub or bind? See filter and intake.</source>
        <translation>Rhythmus, Temperatur des Reglers und Ansteuerung notieren; das Rad von Hand drehen (Zündung aus): schleift oder klemmt es? Filter und Ansaugung ansehen.</translation>
    </message>
    <message>
        <source>Note the rhythm, the controller&apos;s temperature and the request; turn the wheel by hand (key off): does it rub or bind? See filter and intake. Motor current on high below 80 % of the fuse? If not, the motor makes the controller cut out; if it is, run the motor from a fused lead (20 to 30 A, heavy wire), wheel clear, for a short time: steady there means the controller is at fault. The heat sink burns. {0} {1}</source>
        <translation>Rhythmus, Temperatur des Reglers und Ansteuerung notieren; das Rad von Hand drehen (Zündung aus): schleift oder klemmt es? Filter und Ansaugung ansehen. Motorstrom auf höchster Stufe unter 80 % der Sicherung? Wenn nicht, bringt der Motor den Regler zum Abschalten; wenn ja, den Motor kurz an einer abgesicherten Leitung betreiben (20 bis 30 A, dicke Leitung), Rad frei: läuft er dort ruhig, ist der Regler schuld. Der Kühlkörper ist heiß. {0} {1}</translation>
    </message>
    <message>
        <source>Nothing could be told.</source>
        <translation>Es ließ sich nichts sagen.</translation>
    </message>
    <message>
        <source>Nothing electrical is found wrong at this moment ({0}). {1} No part is to be ordered on this.</source>
        <translation>Elektrisch ist im Augenblick nichts Falsches zu finden ({0}). {1} Darauf ist kein Teil zu bestellen.</translation>
    </message>
    <message>
        <source>Nothing is lost so far; it is put together when the recording ends.</source>
        <translation>Bisher ist nichts verloren; am Ende der Aufzeichnung wird alles zusammengesetzt.</translation>
    </message>
    <message>
        <source>Nothing that meterlog records or packs lies so deep: look what was put there, and take it out.</source>
        <translation>Nichts, was meterlog aufzeichnet oder packt, liegt so tief: nachsehen, was dort abgelegt wurde, und es herausnehmen.</translation>
    </message>
    <message>
        <source>Nothing was entered.</source>
        <translation>Nichts wurde eingegeben.</translation>
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
        <source>ONE PART: {0}</source>
        <translation>NUR EIN TEIL: {0}</translation>
    </message>
    <message>
        <source>Ohms of each step with the plug off and the leads&apos; own ohms taken off; look at the plug&apos;s pins and at the motor&apos;s current first.</source>
        <translation>Ohm jeder Stufe bei abgezogenem Stecker, die Ohm der Messleitungen abgezogen; zuerst die Stifte des Steckers und den Motorstrom ansehen.</translation>
    </message>
    <message>
        <source>Old part and new part have the same serial number {0}.</source>
        <translation>Altes und neues Teil haben dieselbe Seriennummer {0}.</translation>
    </message>
    <message>
        <source>On bare metal beside the joint, not on its eyelet.</source>
        <translation>Auf blankem Blech neben dem Massepunkt, nicht auf seiner Öse.</translation>
    </message>
    <message>
        <source>On high: voltage across the motor within 0.7 V of the battery? If not, follow the drop from the battery to the feed and from the return to the ground.</source>
        <translation>Auf höchster Stufe: Spannung am Motor höchstens 0,7 V unter der Batterie? Wenn nicht, dem Spannungsfall von der Batterie zum Plus und vom Minus zur Masse folgen.</translation>
    </message>
    <message>
        <source>On high: voltage across the motor within 0.7 V of the battery? If not, follow the drop from the battery to the feed and from the return to the ground. If it is: filter, flaps, wheel on its shaft; then brushes (unsteady current). {0} {1}</source>
        <translation>Auf höchster Stufe: Spannung am Motor höchstens 0,7 V unter der Batterie? Wenn nicht, dem Spannungsfall von der Batterie zum Plus und vom Minus zur Masse folgen. Wenn ja: Filter, Klappen, Rad auf der Welle; dann die Bürsten (unruhiger Strom). {0} {1}</translation>
    </message>
    <message>
        <source>On the blades of the motor, beside the plug.</source>
        <translation>Auf den Flachzungen des Motors, neben dem Stecker.</translation>
    </message>
    <message>
        <source>On the other test tab of the fuse.</source>
        <translation>Auf dem anderen Messpunkt der Sicherung.</translation>
    </message>
    <message>
        <source>On the test tab of the fuse.</source>
        <translation>Auf dem Messpunkt der Sicherung.</translation>
    </message>
    <message>
        <source>On this system it belongs to the group {0}: run `sudo usermod -aG {1} $USER`, then log out and in again.</source>
        <translation>Auf diesem System gehört er der Gruppe {0}: `sudo usermod -aG {1} $USER` ausführen, dann ab- und wieder anmelden.</translation>
    </message>
    <message>
        <source>On {0} of {1} made while the current was gone, it returned{2} within {3} s (± {4} s){5}</source>
        <translation>Bei {0} von {1}, während der Strom weg war, kam er{2} binnen {3} s (± {4} s) zurück{5}</translation>
    </message>
    <message>
        <source>On {0} of {1} made while the motor ran, its current went within 0.5 s ({2}).</source>
        <translation>Bei {0} von {1}, während der Motor lief, ging der Strom binnen 0,5 s weg ({2}).</translation>
    </message>
    <message>
        <source>Once only.</source>
        <translation>Nur einmal.</translation>
    </message>
    <message>
        <source>One doubt</source>
        <translation>Ein Zweifel</translation>
    </message>
    <message>
        <source>One probe on the motor&apos;s blade; back-probe the return wire.</source>
        <translation>Eine Messspitze auf der Flachzunge des Motors; von hinten an der Minusleitung messen.</translation>
    </message>
    <message>
        <source>One reading only: a slip of the meter looks alike.</source>
        <translation>Nur ein Messwert: ein Ausrutscher des Messgeräts sähe gleich aus.</translation>
    </message>
    <message>
        <source>Only one side states {0}: the comparison holds only if it was the same.</source>
        <translation>Nur eine Seite nennt {0}: Der Vergleich gilt nur, wenn es gleich war.</translation>
    </message>
    <message>
        <source>Open it and save it without.</source>
        <translation>Öffnen und ohne speichern.</translation>
    </message>
    <message>
        <source>Operation not permitted</source>
        <translation>das ist nicht erlaubt</translation>
    </message>
    <message>
        <source>Other consumers of the same feed dead as well?</source>
        <translation>Sind andere Verbraucher an derselben Versorgung auch tot?</translation>
    </message>
    <message>
        <source>Over {0} turns no bar stands out: pattern consistent with a commutator in order.</source>
        <translation>Über {0} Umdrehungen fällt keine Lamelle auf: Muster passend zu einem Kollektor in Ordnung.</translation>
    </message>
    <message>
        <source>Pattern consistent with {0}. {1}</source>
        <translation>Muster passend zu {0}. {1}</translation>
    </message>
    <message>
        <source>Permission denied</source>
        <translation>keine Rechte dafür</translation>
    </message>
    <message>
        <source>Photo {0} of the job card is not in the pack: {1}.</source>
        <translation>Foto {0} der Auftragskarte ist nicht im Paket: {1}.</translation>
    </message>
    <message>
        <source>Plug in or connect its disk, or choose another table of baselines.</source>
        <translation>Das Laufwerk anstecken oder verbinden, oder eine andere Vergleichstabelle wählen.</translation>
    </message>
    <message>
        <source>Plug in the device {0}:{1}{2}.</source>
        <translation>Das Gerät {0}:{1}{2} anstecken.</translation>
    </message>
    <message>
        <source>Plug it into the USB socket where it was.</source>
        <translation>In dieselbe USB-Buchse stecken wie vorher.</translation>
    </message>
    <message>
        <source>Probe on the lead of the post itself, not on the clamp; the other probe stays on the negative post.</source>
        <translation>Messspitze auf den Batteriepol selbst, nicht auf die Klemme; die andere bleibt am Minuspol.</translation>
    </message>
    <message>
        <source>Pulsed module with a feed of its own, relay fed by the ignition, 12 V</source>
        <translation>Getaktetes Modul mit eigener Plusleitung, Relais von der Zündung versorgt, 12 V</translation>
    </message>
    <message>
        <source>Pulsed module with a feed of its own, relay fed by the ignition, 24 V</source>
        <translation>Getaktetes Modul mit eigener Plusleitung, Relais von der Zündung versorgt, 24 V</translation>
    </message>
    <message>
        <source>Put [channels.accuracy] into the meter&apos;s profile, or leave out --sensor-accuracy.</source>
        <translation>[channels.accuracy] ins Profil des Messgeräts schreiben, oder --sensor-accuracy weglassen.</translation>
    </message>
    <message>
        <source>Put back a whole copy of that file; or keep it under another name and make the edits anew.</source>
        <translation>Eine vollständige Kopie dieser Datei zurücklegen; oder sie unter anderem Namen behalten und die Änderungen neu machen.</translation>
    </message>
    <message>
        <source>Put in front which: {0}.</source>
        <translation>Voranstellen, welches: {0}.</translation>
    </message>
    <message>
        <source>Put it on the connections at its terminals.</source>
        <translation>Zu den Verbindungen an seinen Anschlüssen setzen.</translation>
    </message>
    <message>
        <source>Put it right; nothing was changed.</source>
        <translation>Richtigstellen; nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Put that right first, and measure again: nothing is told of the vehicle before.</source>
        <translation>Das zuerst in Ordnung bringen und neu messen: vorher ist über das Fahrzeug nichts gesagt.</translation>
    </message>
    <message>
        <source>Put that right, and measure again: what rests on it tells nothing of the vehicle before.</source>
        <translation>Das in Ordnung bringen und neu messen: was darauf beruht, sagt vorher nichts über das Fahrzeug.</translation>
    </message>
    <message>
        <source>Put the profile among your own under this name.</source>
        <translation>Das Profil unter diesem Namen zu den eigenen legen.</translation>
    </message>
    <message>
        <source>Put the two together.</source>
        <translation>Die beiden zusammenlegen.</translation>
    </message>
    <message>
        <source>REL is off</source>
        <translation>REL ist aus</translation>
    </message>
    <message>
        <source>REL is on: readings are relative to a stored one</source>
        <translation>REL ist an: Messwerte gelten relativ zu einem gespeicherten</translation>
    </message>
    <message>
        <source>Read-only file system</source>
        <translation>das Laufwerk lässt nur Lesen zu</translation>
    </message>
    <message>
        <source>Reading {0}</source>
        <translation>Messung {0}</translation>
    </message>
    <message>
        <source>Readings and judgement of a cabin fan, for a warranty claim</source>
        <translation>Messwerte und Beurteilung eines Innenraumgebläses, für einen Garantieantrag</translation>
    </message>
    <message>
        <source>Readings that showed no current while the fan was asked to run</source>
        <translation>Messwerte, die keinen Strom zeigten, während das Gebläse laufen sollte</translation>
    </message>
    <message>
        <source>Readings {0}</source>
        <translation>Messungen {0}</translation>
    </message>
    <message>
        <source>Record half a second or more at a steady speed with a channel of 7,000 readings/s or more, the motor on plain direct voltage, twice: the same bar again? A pattern alone is no reason to replace a motor: it must go with a dropout.</source>
        <translation>Eine halbe Sekunde oder mehr bei ruhiger Stufe mit einem Kanal von 7.000 Messwerten/s oder mehr aufzeichnen, den Motor an glatter Gleichspannung, zweimal: wieder dieselbe Lamelle? Ein Muster allein ist kein Grund, einen Motor zu tauschen: es muss mit einem Aussetzer zusammengehen.</translation>
    </message>
    <message>
        <source>Record half a second or more at a steady speed with a channel of 7,000 readings/s or more, the motor on plain direct voltage, twice: the same bar again? A pattern alone is no reason to replace a motor: it must go with a dropout. {0}</source>
        <translation>Eine halbe Sekunde oder mehr bei ruhiger Stufe mit einem Kanal von 7.000 Messwerten/s oder mehr aufzeichnen, den Motor an glatter Gleichspannung, zweimal: wieder dieselbe Lamelle? Ein Muster allein ist kein Grund, einen Motor zu tauschen: es muss mit einem Aussetzer zusammengehen. {0}</translation>
    </message>
    <message>
        <source>Record the current with a faster channel (or the meter&apos;s peak mode), fan on high, doors shut; tap the motor lightly and mark each tap: a true dropout reads next to nothing.</source>
        <translation>Den Strom mit einem schnelleren Kanal (oder der Spitzenwertfunktion) aufzeichnen, Gebläse auf höchster Stufe, Türen zu; leicht an den Motor klopfen und jedes Klopfen markieren: ein echter Aussetzer zeigt fast nichts.</translation>
    </message>
    <message>
        <source>Record the current with a faster channel (or the meter&apos;s peak mode), fan on high, doors shut; tap the motor lightly and mark each tap: a true dropout reads next to nothing. {0} {1}</source>
        <translation>Den Strom mit einem schnelleren Kanal (oder der Spitzenwertfunktion) aufzeichnen, Gebläse auf höchster Stufe, Türen zu; leicht an den Motor klopfen und jedes Klopfen markieren: ein echter Aussetzer zeigt fast nichts. {0} {1}</translation>
    </message>
    <message>
        <source>Record the motor&apos;s feed and return, both against the battery&apos;s negative post, and wait for the fault: feed gone: fuse, relay, plug; feed there and return near 0 V: motor open; both near the battery: ground side open.</source>
        <translation>Plus und Minus des Motors aufzeichnen, beide gegen den Minuspol der Batterie, und auf den Fehler warten: Plus weg: Sicherung, Relais, Stecker; Plus da und Minus nahe 0 V: Motor offen; beide nahe der Batterie: Masseseite offen.</translation>
    </message>
    <message>
        <source>Record the motor&apos;s feed and return, both against the battery&apos;s negative post, and wait for the fault: feed gone: fuse, relay, plug; feed there and return near 0 V: motor open; both near the battery: ground side open. {0}</source>
        <translation>Plus und Minus des Motors aufzeichnen, beide gegen den Minuspol der Batterie, und auf den Fehler warten: Plus weg: Sicherung, Relais, Stecker; Plus da und Minus nahe 0 V: Motor offen; beide nahe der Batterie: Masseseite offen. {0}</translation>
    </message>
    <message>
        <source>Record the motor&apos;s return (ground side) as well, against the battery&apos;s negative post, and wait for the fault: near 0 V with no current means the motor is open; near the feed means the ground side is (controller, its ground or its request).</source>
        <translation>Auch das Minus des Motors (Masseseite) aufzeichnen, gegen den Minuspol der Batterie, und auf den Fehler warten: nahe 0 V ohne Strom heißt Motor offen; nahe Plus heißt Masseseite offen (Regler, seine Masse oder Ansteuerung).</translation>
    </message>
    <message>
        <source>Record the motor&apos;s return (ground side) as well, against the battery&apos;s negative post, and wait for the fault: near 0 V with no current means the motor is open; near the feed means the ground side is (controller, its ground or its request). {0}</source>
        <translation>Auch das Minus des Motors (Masseseite) aufzeichnen, gegen den Minuspol der Batterie, und auf den Fehler warten: nahe 0 V ohne Strom heißt Motor offen; nahe Plus heißt Masseseite offen (Regler, seine Masse oder Ansteuerung). {0}</translation>
    </message>
    <message>
        <source>Record the request at the controller together with the current; manual mode, one speed.</source>
        <translation>Die Ansteuerung am Regler zusammen mit dem Strom aufzeichnen; Handbetrieb, eine Stufe.</translation>
    </message>
    <message>
        <source>Record the request at the controller together with the current; manual mode, one speed. If the request goes first: control head, its wiring, a sensor, or load shedding. Polarity and values differ by model: compare with the manual. A meter of 10 Mohm only, no test lamp on module pins. {0}</source>
        <translation>Die Ansteuerung am Regler zusammen mit dem Strom aufzeichnen; Handbetrieb, eine Stufe. Geht die Ansteuerung zuerst: Bedienteil, seine Leitungen, ein Fühler oder Lastabwurf. Polung und Werte je nach Modell: mit dem Handbuch vergleichen. Nur ein Messgerät mit 10 MOhm, keine Prüflampe an Steuergeräten. {0}</translation>
    </message>
    <message>
        <source>Recordings are not touched by this: look through their folders by hand, and make room or rights for the file.</source>
        <translation>Aufzeichnungen bleiben davon unberührt: ihre Ordner von Hand durchsehen, und Platz oder Rechte für die Datei schaffen.</translation>
    </message>
    <message>
        <source>Recordings are not touched by this; turn to the page again to try once more.</source>
        <translation>Aufzeichnungen bleiben davon unberührt; die Seite noch einmal aufschlagen, um es wieder zu versuchen.</translation>
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
        <source>Resistor pack and speed switch on the ground side, relay fed by the ignition, 12 V</source>
        <translation>Vorwiderstände und Stufenschalter auf der Masseseite, Relais von der Zündung versorgt, 12 V</translation>
    </message>
    <message>
        <source>Resistor pack and speed switch on the ground side, relay fed by the ignition, 24 V</source>
        <translation>Vorwiderstände und Stufenschalter auf der Masseseite, Relais von der Zündung versorgt, 24 V</translation>
    </message>
    <message>
        <source>Ripple of {0}{1} Hz, {2} % of the mean</source>
        <translation>Welligkeit von {0}{1} Hz, {2} % des Mittels</translation>
    </message>
    <message>
        <source>Ripple pattern{0} consistent with {1} (confidence {2}); bars stand out at {3} of {4} speeds where single bars can be told. {5}</source>
        <translation>Welligkeitsmuster{0} passend zu {1} (Vertrauen {2}); Lamellen fallen auf {3} von {4} Stufen auf, wo einzelne zu unterscheiden sind. {5}</translation>
    </message>
    <message>
        <source>Rotor held{0}: {1}{2}, held from {3} A on{4}.</source>
        <translation>Läufer blockiert{0}: {1}{2}, blockiert ab {3} A{4}.</translation>
    </message>
    <message>
        <source>Run it on a fused direct feed for a moment and clamp its current; spin the wheel by hand, key off.</source>
        <translation>Kurz direkt über eine Sicherung betreiben und den Strom mit der Zange messen; das Rad von Hand drehen, Zündung aus.</translation>
    </message>
    <message>
        <source>Run meterlog screen once more with the same folders and the same --out: what has not changed is not judged again.</source>
        <translation>meterlog screen noch einmal mit denselben Ordnern und demselben --out starten: was sich nicht geändert hat, wird nicht noch einmal beurteilt.</translation>
    </message>
    <message>
        <source>Run: {0}</source>
        <translation>Ausführen: {0}</translation>
    </message>
    <message>
        <source>SCPI bench instrument, voltage and current in one answer (generic)</source>
        <translation>SCPI-Tischgerät, Spannung und Strom in einer Antwort (allgemein)</translation>
    </message>
    <message>
        <source>SCPI bench multimeter, direct voltage, about 5 readings/s (generic)</source>
        <translation>SCPI-Tischmultimeter, Gleichspannung, etwa 5 Messwerte/s (allgemein)</translation>
    </message>
    <message>
        <source>Same voltage at both ends of each wire.</source>
        <translation>An beiden Enden jeder Leitung dieselbe Spannung.</translation>
    </message>
    <message>
        <source>Same voltage at both ends of the wire of each speed.</source>
        <translation>An beiden Enden der Leitung jeder Stufe dieselbe Spannung.</translation>
    </message>
    <message>
        <source>Same voltage at both ends of the wire.</source>
        <translation>An beiden Enden der Leitung dieselbe Spannung.</translation>
    </message>
    <message>
        <source>Save it as UTF-8.</source>
        <translation>Als UTF-8 speichern.</translation>
    </message>
    <message>
        <source>Say one of --clamp, --shunt, --divider and --scale.</source>
        <translation>Eines angeben von --clamp, --shunt, --divider und --scale.</translation>
    </message>
    <message>
        <source>Say what is stamped on the fuse, in amperes.</source>
        <translation>Angeben, was auf der Sicherung steht, in Ampere.</translation>
    </message>
    <message>
        <source>Say which: {0}.</source>
        <translation>Angeben, welches: {0}.</translation>
    </message>
    <message>
        <source>Say who and why: a reviewer will ask.</source>
        <translation>Angeben, wer und warum: ein Prüfer wird fragen.</translation>
    </message>
    <message>
        <source>Screen folders with good runs of it, or give its number with --part.</source>
        <translation>Ordner mit guten Läufen davon durchsehen lassen, oder die Nummer mit --part angeben.</translation>
    </message>
    <message>
        <source>Set ask_errors = false under [scpi] if it knows no such query.</source>
        <translation>ask_errors = false unter [scpi] setzen, wenn es diese Frage nicht kennt.</translation>
    </message>
    <message>
        <source>Set out_report under [link.hid] in the profile, if it can.</source>
        <translation>Wenn es das kann, out_report unter [link.hid] im Profil setzen.</translation>
    </message>
    <message>
        <source>Set the turns to 1.</source>
        <translation>Die Windungen auf 1 setzen.</translation>
    </message>
    <message>
        <source>Shorter dropouts than this meter is sure to show may leave a dip, from about {0} ms on; what a dip came of is inferred, never measured.</source>
        <translation>Kürzere Aussetzer, als dieses Messgerät sicher zeigt, können einen Einbruch hinterlassen, ab etwa {0} ms; woher ein Einbruch kam, ist gefolgert, nie gemessen.</translation>
    </message>
    <message>
        <source>Speed switch and resistor pack on the feed side, relay fed by the ignition, 12 V</source>
        <translation>Stufenschalter und Vorwiderstände auf der Plusseite, Relais von der Zündung versorgt, 12 V</translation>
    </message>
    <message>
        <source>Speed switch and resistor pack on the feed side, relay fed by the ignition, 24 V</source>
        <translation>Stufenschalter und Vorwiderstände auf der Plusseite, Relais von der Zündung versorgt, 24 V</translation>
    </message>
    <message>
        <source>Speed {0} (from {1})</source>
        <translation>Stufe {0} (ab {1})</translation>
    </message>
    <message>
        <source>Speed {0} draws no steady current when running; {1}: fail, outside for {2} s</source>
        <translation>Stufe {0} zieht im Lauf keinen stetigen Strom; {1}: nicht bestanden, {2} s lang außerhalb</translation>
    </message>
    <message>
        <source>Speed {0} draws {1} when running; {2}</source>
        <translation>Stufe {0} zieht {1} im Lauf; {2}</translation>
    </message>
    <message>
        <source>Speed {0}: can&apos;t tell, as the feed is pulsed and what was taken for its steady current are the pulses without the pauses. Measure it with a meter that averages over many pulses.</source>
        <translation>Stufe {0}: nicht zu sagen, da die Versorgung getaktet ist und als Dauerstrom die Pulse ohne die Pausen genommen wurden. Mit einem Messgerät messen, das über viele Pulse mittelt.</translation>
    </message>
    <message>
        <source>Speed {0}: can&apos;t tell: of one of the currents no uncertainty is known.</source>
        <translation>Stufe {0}: nicht zu sagen: von einem der Ströme ist keine Unsicherheit bekannt.</translation>
    </message>
    <message>
        <source>Speed {0}: can&apos;t tell: {1}.</source>
        <translation>Stufe {0}: nicht zu sagen: {1}.</translation>
    </message>
    <message>
        <source>Speed {0}: new {1}; {2}: at least {3} are needed to say within what good ones lie.</source>
        <translation>Stufe {0}: neu {1}; {2}: mindestens {3} sind nötig, um den Bereich der guten zu nennen.</translation>
    </message>
    <message>
        <source>Speed {0}: new {1}; {2}; {3} % of good ones lie within {4} to {5} A with {6} % confidence: {7}{8}.{9}</source>
        <translation>Stufe {0}: neu {1}; {2}; {3} % der guten liegen mit {6} % Vertrauen innerhalb {4} bis {5} A: {7}{8}.{9}</translation>
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
        <source>Speed {0}: the current {1} {2} from {3} A to {4} A ({5} %), first from {6} s to {7} s, {8}</source>
        <translation>Stufe {0}: der Strom {1} {2} von {3} A auf {4} A ({5} %), zuerst von {6} s bis {7} s, {8}</translation>
    </message>
    <message>
        <source>Speed {0}: {1} {2} at full speed, at most {3} V{4}: {5}</source>
        <translation>Stufe {0}: {1} {2} auf höchster Stufe, höchstens {3} V{4}: {5}</translation>
    </message>
    <message>
        <source>Speed {0}: {1}.</source>
        <translation>Stufe {0}: {1}.</translation>
    </message>
    <message>
        <source>Speed {0}: {1}{2}.</source>
        <translation>Stufe {0}: {1}{2}.</translation>
    </message>
    <message>
        <source>Speeds are paired by order of current, not by command: a motor that draws the current of another speed would be paired with that.</source>
        <translation>Die Stufen sind nach der Größe des Stroms zugeordnet, nicht nach der Schaltung: ein Motor, der den Strom einer anderen Stufe zieht, würde mit dieser verglichen.</translation>
    </message>
    <message>
        <source>Stale file handle</source>
        <translation>das Netzlaufwerk kennt die Datei nicht mehr</translation>
    </message>
    <message>
        <source>Start a recording first.</source>
        <translation>Zuerst eine Aufzeichnung starten.</translation>
    </message>
    <message>
        <source>Start again with --assign {0}=PROFILE.CHANNEL.</source>
        <translation>Noch einmal mit --assign {0}=PROFILE.CHANNEL starten.</translation>
    </message>
    <message>
        <source>Start again with --meter typed-volts@typed: beside the others.</source>
        <translation>Noch einmal mit --meter typed-volts@typed starten: neben den anderen.</translation>
    </message>
    <message>
        <source>Start the other side again, and record at the port it gives.</source>
        <translation>Die Gegenseite neu starten und an dem Anschluss aufzeichnen, den sie nennt.</translation>
    </message>
    <message>
        <source>Start to speed {0}: peak over steady, old {1}, new {2}{3}.</source>
        <translation>Anlauf auf Stufe {0}: Spitze zu Dauerstrom, alt {1}, neu {2}{3}.</translation>
    </message>
    <message>
        <source>Start to speed {0}: peak {1}{2}.</source>
        <translation>Anlauf auf Stufe {0}: Spitze {1}{2}.</translation>
    </message>
    <message>
        <source>State it with its tolerance.</source>
        <translation>Mit seiner Toleranz angeben.</translation>
    </message>
    <message>
        <source>State the meter&apos;s accuracy, or leave it out.</source>
        <translation>Die Genauigkeit des Messgeräts angeben oder weglassen.</translation>
    </message>
    <message>
        <source>State what repeats first, such as fitted_by or new_part.number.</source>
        <translation>Zuerst angeben, was sich wiederholt, etwa fitted_by oder new_part.number.</translation>
    </message>
    <message>
        <source>State what repeats first, such as who fitted the part, or the new part&apos;s number.</source>
        <translation>Zuerst angeben, was sich wiederholt, etwa wer das Teil einbaute, oder die Nummer des neuen Teils.</translation>
    </message>
    <message>
        <source>State {0}.</source>
        <translation>{0} angeben.</translation>
    </message>
    <message>
        <source>Steady load of the {0} A fuse: can&apos;t tell, as {1}; a meter and a clamp of a higher range would settle it.</source>
        <translation>Dauerlast der {0}-A-Sicherung: nicht zu sagen, denn {1}; Messgerät und Zange mit größerem Messbereich würden es klären.</translation>
    </message>
    <message>
        <source>Step at {0}</source>
        <translation>Stufe ab {0}</translation>
    </message>
    <message>
        <source>Stop that recording first; it seals itself.</source>
        <translation>Zuerst diese Aufzeichnung stoppen; sie versiegelt sich selbst.</translation>
    </message>
    <message>
        <source>Student&apos;s t for {0} effective degrees of freedom</source>
        <translation>Student-t für {0} effektive Freiheitsgrade</translation>
    </message>
    <message>
        <source>Such as --number &apos;[A-Z]{2}-\d{4}&apos;; its first group counts, where it has one.</source>
        <translation>Etwa --number &apos;[A-Z]{2}-\d{4}&apos;; hat er eine, zählt die erste Gruppe.</translation>
    </message>
    <message>
        <source>Swap it for a known good one of the same type, and look at the socket&apos;s pins.</source>
        <translation>Gegen ein nachweislich gutes derselben Bauart tauschen und die Kontakte des Sockels ansehen.</translation>
    </message>
    <message>
        <source>Switch to this from key off and listen: does the relay click?</source>
        <translation>Von Zündung aus hierher schalten und hinhören: klickt das Relais?</translation>
    </message>
    <message>
        <source>Take it away.</source>
        <translation>Wegbewegen.</translation>
    </message>
    <message>
        <source>Take it away; a key is made when it is needed.</source>
        <translation>Wegbewegen; ein Schlüssel wird gemacht, wenn er gebraucht wird.</translation>
    </message>
    <message>
        <source>Take it out. A fused jumper goes round one contact or connection only.</source>
        <translation>Herausnehmen. Eine abgesicherte Brücke umgeht nur einen Kontakt oder eine Verbindung.</translation>
    </message>
    <message>
        <source>Take one: --take-zero {0}, with the clamp empty and shut.</source>
        <translation>Einen nehmen: --take-zero {0}, mit leerer, geschlossener Zange.</translation>
    </message>
    <message>
        <source>Take the zip.</source>
        <translation>Das Zip nehmen.</translation>
    </message>
    <message>
        <source>Tap the motor&apos;s housing lightly, three to five times: does the fan start?</source>
        <translation>Drei- bis fünfmal leicht an das Motorgehäuse klopfen: läuft das Gebläse an?</translation>
    </message>
    <message>
        <source>That mode has no severity.</source>
        <translation>Diese Art hat keine Schwere.</translation>
    </message>
    <message>
        <source>That stands for nothing electrical.</source>
        <translation>Das steht für nichts Elektrisches.</translation>
    </message>
    <message>
        <source>The Meters page lists the ports that are there.</source>
        <translation>Die Seite Messgeräte zeigt die vorhandenen Anschlüsse.</translation>
    </message>
    <message>
        <source>The PDF and the zip of one pack say the same there: hold one against the other.</source>
        <translation>PDF und Zip eines Pakets nennen dort dasselbe: eines gegen das andere halten.</translation>
    </message>
    <message>
        <source>The PDF does not begin at the beginning of its file.</source>
        <translation>Das PDF beginnt nicht am Anfang seiner Datei.</translation>
    </message>
    <message>
        <source>The PDF file itself is not, to the byte, as it was made: it was damaged, or saved by another program.</source>
        <translation>Die PDF-Datei selbst ist nicht aufs Byte so, wie sie gemacht wurde: sie wurde beschädigt oder von einem anderen Programm gespeichert.</translation>
    </message>
    <message>
        <source>The PDF was saved by {0}, and {1} is here: its form can&apos;t be compared to the byte.</source>
        <translation>Das PDF wurde von {0} gespeichert, hier ist {1}: seine Form lässt sich nicht aufs Byte vergleichen.</translation>
    </message>
    <message>
        <source>The VIN has the character {0}, which no VIN has{1}.</source>
        <translation>Die FIN hat das Zeichen {0}, das keine FIN hat{1}.</translation>
    </message>
    <message>
        <source>The VIN has {0} characters; since 1981 a road vehicle&apos;s has {1}. Compare it with the vehicle.</source>
        <translation>Die FIN hat {0} Zeichen; seit 1981 hat die eines Straßenfahrzeugs {1}. Mit dem Fahrzeug vergleichen.</translation>
    </message>
    <message>
        <source>The VIN&apos;s check digit (position 9) is {0}, but by the others it would be {1}</source>
        <translation>Die Prüfziffer der FIN (Stelle 9) ist {0}, nach den anderen wäre sie {1}</translation>
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
        <translation>Die Lamellen des Kollektors waren nicht zu sehen: {0}.</translation>
    </message>
    <message>
        <source>The commutator&apos;s bars were not looked at: that needs 7,000 readings/s or more.</source>
        <translation>Die Lamellen des Kollektors wurden nicht betrachtet: dafür braucht es 7.000 Messwerte/s oder mehr.</translation>
    </message>
    <message>
        <source>The controller has to turn more into heat than it may.</source>
        <translation>Der Regler muss mehr in Wärme umsetzen, als er darf.</translation>
    </message>
    <message>
        <source>The controller is said to pulse the motor&apos;s voltage{0}; this meter{1} can tell the average only ({2}). Whether it pulses as it should, a fast channel across the motor would tell.</source>
        <translation>Der Regler taktet laut Angabe die Motorspannung{0}; dieses Messgerät{1} kann nur das Mittel nennen ({2}). Ob er richtig taktet, würde ein schneller Kanal am Motor zeigen.</translation>
    </message>
    <message>
        <source>The controller is stated to be a pulsed one, and its voltage was not read with the current: chopping can&apos;t be told from ripple. Feed the motor with plain direct current, or record the motor&apos;s voltage at the same rate.</source>
        <translation>Der Regler ist laut Angabe getaktet, und seine Spannung wurde nicht mit dem Strom gemessen: Takten und Welligkeit sind nicht zu unterscheiden. Den Motor mit glatter Gleichspannung versorgen oder die Motorspannung ebenso schnell aufzeichnen.</translation>
    </message>
    <message>
        <source>The controller turns too much into heat by it; a motor that draws too much kills it.</source>
        <translation>Der Regler setzt dabei zu viel in Wärme um; ein Motor, der zu viel zieht, zerstört ihn.</translation>
    </message>
    <message>
        <source>The controller&apos;s request not recorded: a lost command looks like a lost ground.</source>
        <translation>Die Ansteuerung des Reglers nicht aufgezeichnet: eine ausgefallene Ansteuerung sieht aus wie eine ausgefallene Masse.</translation>
    </message>
    <message>
        <source>The current came back within {0} s of a tap in {1} of {2} dropouts; taps at other moments would do as well with a chance of {3}.</source>
        <translation>Der Strom kam in {1} von {2} Aussetzern innerhalb von {0} s nach einem Klopfen zurück; Klopfen zu anderen Zeiten träfe es mit einer Wahrscheinlichkeit von {3} ebenso.</translation>
    </message>
    <message>
        <source>The current changed in the middle of what is marked as speed {0}: a mark that is late or was forgotten looks the same</source>
        <translation>Der Strom änderte sich mitten in dem, was als Stufe {0} markiert ist: eine späte oder vergessene Markierung sieht genauso aus</translation>
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
        <source>The current is pulsed: dropouts that the limits do not count for being short can&apos;t be told from its pauses.</source>
        <translation>Der Strom ist getaktet: Aussetzer, die die Grenzen als zu kurz nicht zählen, sind von seinen Pausen nicht zu unterscheiden.</translation>
    </message>
    <message>
        <source>The current reads nothing from {0} s to {1} s{2}, but {3}: has the clamp&apos;s battery died, or has it switched itself off or slipped off the wire? Put that right and measure again.</source>
        <translation>Der Strom zeigt von {0} s bis {1} s nichts{2}, aber {3}: ist die Batterie der Zange leer, hat sie sich abgeschaltet oder ist sie von der Leitung gerutscht? Das in Ordnung bringen und noch einmal messen.</translation>
    </message>
    <message>
        <source>The current went when this was moved at {0} s: {1}</source>
        <translation>Der Strom ging weg, als bei {0} s dies bewegt wurde: {1}</translation>
    </message>
    <message>
        <source>The date of repair is before the date of failure.</source>
        <translation>Das Datum der Reparatur liegt vor dem des Ausfalls.</translation>
    </message>
    <message>
        <source>The date of {0} is {1}; expected year-month-day, such as 2026-11-29.</source>
        <translation>Das Datum ({0}) ist {1}; erwartet wird Jahr-Monat-Tag, etwa 2026-11-29.</translation>
    </message>
    <message>
        <source>The date of {0}, {1}, has not come yet.</source>
        <translation>Das Datum von {0}, {1}, ist noch nicht gekommen.</translation>
    </message>
    <message>
        <source>The fan had been off, and came on while off was still marked: one that was switched on without a mark, or before it, looks the same</source>
        <translation>Das Gebläse war aus gewesen und lief an, als noch Aus markiert war: eines, das ohne Markierung oder vor ihr eingeschaltet wurde, sieht genauso aus</translation>
    </message>
    <message>
        <source>The fan loads its fuse too much: drag, or the wrong fuse.</source>
        <translation>Das Gebläse belastet seine Sicherung zu stark: Schwergang, oder die falsche Sicherung.</translation>
    </message>
    <message>
        <source>The feed loses too much voltage under load: fuse holder, relay contacts, plug or wire.</source>
        <translation>Das Plus verliert unter Last zu viel Spannung: Sicherungshalter, Relaiskontakte, Stecker oder Leitung.</translation>
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
        <source>The filter was stated as clogged, which by itself lowers the current</source>
        <translation>Der Filter ist als verstopft angegeben, was allein den Strom senkt</translation>
    </message>
    <message>
        <source>The first and the last zero of {0} agree within {1} A (less than {2} A is wanted).</source>
        <translation>Der erste und der letzte Nullpunkt von {0} stimmen auf {1} A überein (gewünscht ist unter {2} A).</translation>
    </message>
    <message>
        <source>The first node must be the battery negative post: every voltage is against it.</source>
        <translation>Der erste Knoten muss der Minuspol der Batterie sein: jede Spannung gilt gegen ihn.</translation>
    </message>
    <message>
        <source>The folder is looked into this time, and forgotten afterwards.</source>
        <translation>Dieses Mal wird in den Ordner gesehen, danach ist er vergessen.</translation>
    </message>
    <message>
        <source>The good ones were measured under conditions of their own: what those do to the current is in their spread. Nothing they were measured with is taken as shared with the new one.</source>
        <translation>Die guten wurden unter eigenen Bedingungen gemessen: deren Einfluss auf den Strom steckt in ihrer Streuung. Kein Messgerät gilt als gemeinsam mit dem neuen.</translation>
    </message>
    <message>
        <source>The ground side loses too much voltage under load: ground wire, stud or plug.</source>
        <translation>Die Masseseite verliert unter Last zu viel Spannung: Masseleitung, Massebolzen oder Stecker.</translation>
    </message>
    <message>
        <source>The ground side of the motor opens: controller, its request, its ground or a connector.</source>
        <translation>Die Masseseite des Motors öffnet: Regler, seine Ansteuerung, seine Masse oder ein Stecker.</translation>
    </message>
    <message>
        <source>The index can&apos;t be kept in {0}: {1}. It is made anew each time; make room or rights there.</source>
        <translation>Das Verzeichnis kann in {0} nicht aufbewahrt werden: {1}. Es wird jedes Mal neu gemacht; dort Platz oder Rechte schaffen.</translation>
    </message>
    <message>
        <source>The index was damaged: it was thrown away and is made anew from the folders. No recording was touched.</source>
        <translation>Das Verzeichnis war beschädigt: es wurde verworfen und wird aus den Ordnern neu gemacht. Keine Aufzeichnung wurde berührt.</translation>
    </message>
    <message>
        <source>The job card gives the serial number {0} for this part; the recording was made with {1}.</source>
        <translation>Die Auftragskarte nennt für dieses Teil die Seriennummer {0}; die Aufzeichnung wurde mit {1} gemacht.</translation>
    </message>
    <message>
        <source>The job card gives {0} for the battery; the run {1} was recorded with {2} V at it, fan off.</source>
        <translation>Die Auftragskarte nennt {0} für die Batterie; der Lauf {1} wurde mit {2} V an ihr aufgenommen, Gebläse aus.</translation>
    </message>
    <message>
        <source>The job card gives {0} for the filter; the run {1} was recorded with the cabin filter {2}.</source>
        <translation>Die Auftragskarte nennt {0} für den Filter; der Lauf {1} wurde mit dem Innenraumfilter {2} aufgenommen.</translation>
    </message>
    <message>
        <source>The job card has the failure on {0}; the run is of {1}, before it.</source>
        <translation>Nach der Auftragskarte war der Ausfall am {0}; der Lauf ist vom {1}, davor.</translation>
    </message>
    <message>
        <source>The job card has the work order {0}; the recording was made for {1}.</source>
        <translation>Die Auftragskarte hat die Auftragsnummer {0}; die Aufzeichnung wurde für {1} gemacht.</translation>
    </message>
    <message>
        <source>The job card names the vehicle {0}; the recording was made with {1}.</source>
        <translation>Die Auftragskarte nennt das Fahrzeug {0}; die Aufzeichnung wurde mit {1} gemacht.</translation>
    </message>
    <message>
        <source>The limits count a dropout from {0} s on (min_dwell_s)</source>
        <translation>Die Grenzen zählen einen Aussetzer ab {0} s (min_dwell_s)</translation>
    </message>
    <message>
        <source>The mark {0} at {1} s</source>
        <translation>Die Marke {0} bei {1} s</translation>
    </message>
    <message>
        <source>The meter averages over {0} ms, longer than a ripple lasts: whatever ripple there is, it doesn&apos;t show it.</source>
        <translation>Das Messgerät mittelt über {0} ms, länger als eine Welle dauert: gibt es Welligkeit, zeigt es sie nicht.</translation>
    </message>
    <message>
        <source>The motor blew into free air, where a sound one draws 15 to 25 % more</source>
        <translation>Der Motor blies frei aus, wo ein guter 15 bis 25 % mehr zieht</translation>
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
        <source>The motor drags: it stalls on low, where it draws the current of a held rotor, and draws too much on the higher speeds on which it turns (bearings, a rubbing wheel, water, worn).</source>
        <translation>Der Motor ist schwergängig: auf kleiner Stufe bleibt er stehen und zieht den Strom eines blockierten Läufers, auf den höheren Stufen, auf denen er dreht, zieht er zu viel (Lager, schleifendes Rad, Wasser, verschlissen).</translation>
    </message>
    <message>
        <source>The motor draws too little current: too little voltage reaches it, too little air moves (filter, flaps, wheel), or its brushes are worn.</source>
        <translation>Der Motor zieht zu wenig Strom: zu wenig Spannung erreicht ihn, zu wenig Luft bewegt sich (Filter, Klappen, Rad), oder seine Bürsten sind verschlissen.</translation>
    </message>
    <message>
        <source>The motor draws too much current: consistent with a motor that drags (bearings, a rubbing wheel, water) or is worn.</source>
        <translation>Der Motor zieht zu viel Strom: passend zu einem schwergängigen Motor (Lager, schleifendes Rad, Wasser) oder einem verschlissenen.</translation>
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
        <translation>Der Motor öffnet innen, an einer Bürste oder am Kollektor: volle Spannung liegt an ihm an, und fast kein Strom fließt.</translation>
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
        <source>The motor&apos;s voltage goes to and fro in a regular beat{0}: consistent with a pulsed feed that is too fast for readings every {1} ms. Frequency and duty can&apos;t be told; only averages mean anything.</source>
        <translation>Die Motorspannung geht in regelmäßigem Takt hin und her{0}: passend zu einer getakteten Versorgung, die für Messwerte alle {1} ms zu schnell ist. Frequenz und Tastgrad sind nicht zu sagen; nur Mittelwerte zählen.</translation>
    </message>
    <message>
        <source>The motor&apos;s voltage is pulsed{0}: {1}, on for {2} % of the time, {3} V on average of {4} V. A slow meter shows the average only.{5}</source>
        <translation>Die Motorspannung ist getaktet{0}: {1}, {2} % der Zeit ein, im Mittel {3} V von {4} V. Ein langsames Messgerät zeigt nur das Mittel.{5}</translation>
    </message>
    <message>
        <source>The motor&apos;s voltage is switched on and off: the chopping hides the ripple. Feed the motor with plain direct current and record again.</source>
        <translation>Die Motorspannung wird ein- und ausgeschaltet: das Takten verdeckt die Welligkeit. Den Motor mit glatter Gleichspannung versorgen und noch einmal aufzeichnen.</translation>
    </message>
    <message>
        <source>The odometer when the vehicle left, {0}, is less than when it came, {1}.</source>
        <translation>Der Kilometerstand bei der Abgabe, {0}, ist kleiner als bei der Annahme, {1}.</translation>
    </message>
    <message>
        <source>The order of commands stays: relabel the steps instead.</source>
        <translation>Die Reihenfolge der Schaltungen bleibt: stattdessen die Stufen umbenennen.</translation>
    </message>
    <message>
        <source>The pages can&apos;t be read ({0}).</source>
        <translation>Die Seiten sind nicht lesbar ({0}).</translation>
    </message>
    <message>
        <source>The photo {0} is not there.</source>
        <translation>Das Foto {0} ist nicht da.</translation>
    </message>
    <message>
        <source>The readings are kept all the same. Check that disk, and review them again.</source>
        <translation>Die Messwerte bleiben trotzdem aufbewahrt. Dieses Laufwerk prüfen und noch einmal beurteilen.</translation>
    </message>
    <message>
        <source>The readings are safe as they are; free some space and seal it again.</source>
        <translation>Die Messwerte sind sicher, wie sie sind; Platz schaffen und noch einmal versiegeln.</translation>
    </message>
    <message>
        <source>The recording can&apos;t be read without it; use a copy of the folder.</source>
        <translation>Die Aufzeichnung ist ohne sie nicht lesbar; eine Kopie des Ordners benutzen.</translation>
    </message>
    <message>
        <source>The ripples are alike within their scatter, so nothing marks the turn: neither bars nor speed can be told. It could also be a pulsed feed; see whether the frequency follows the speed of the fan.</source>
        <translation>Die Wellen gleichen sich innerhalb ihrer Streuung, nichts zeigt also die Umdrehung an: weder Lamellen noch Drehzahl sind zu sagen. Es könnte auch eine getaktete Versorgung sein; sehen, ob die Frequenz der Gebläsestufe folgt.</translation>
    </message>
    <message>
        <source>The rotor is held: the motor draws the current of a standing motor; seized, jammed by something in the housing, or its winding is shorted.</source>
        <translation>Der Läufer ist blockiert: der Motor zieht den Strom eines stehenden Motors; er sitzt fest, etwas im Gehäuse klemmt ihn, oder seine Wicklung hat Kurzschluss.</translation>
    </message>
    <message>
        <source>The signature does not fit: what is here is not what was signed.</source>
        <translation>Die Unterschrift passt nicht: was hier ist, ist nicht das Unterschriebene.</translation>
    </message>
    <message>
        <source>The signature is missing.</source>
        <translation>Die Unterschrift fehlt.</translation>
    </message>
    <message>
        <source>The speeds are {0}.</source>
        <translation>Die Stufen sind {0}.</translation>
    </message>
    <message>
        <source>The start-up current may be higher than read: its peak is more than the meter or the clamp is stated for.</source>
        <translation>Der Anlaufstrom kann höher sein als gemessen: seine Spitze ist mehr, als für Messgerät oder Zange angegeben ist.</translation>
    </message>
    <message>
        <source>The start-up current may be higher than read: the readings stand at its peak, as at the end of the range of the meter or the clamp.</source>
        <translation>Der Anlaufstrom kann höher sein als gemessen: die Messwerte bleiben bei seiner Spitze stehen wie am Ende des Messbereichs von Messgerät oder Zange.</translation>
    </message>
    <message>
        <source>The start-up current was beyond the range of the meter or the clamp: the true peak was higher than what was read.</source>
        <translation>Der Anlaufstrom lag jenseits des Messbereichs von Messgerät oder Zange: die wahre Spitze war höher als das Abgelesene.</translation>
    </message>
    <message>
        <source>The strongest line is now one, now another of the turn&apos;s: the ripple does not stand out from the noise and the notches. More readings a second, or a clamp of more volts an ampere, would help.</source>
        <translation>Die stärkste Linie ist einmal die eine, einmal die andere der Umdrehung: die Welligkeit hebt sich nicht von Rauschen und Kerben ab. Mehr Messwerte je Sekunde oder eine Zange mit mehr Volt je Ampere würden helfen.</translation>
    </message>
    <message>
        <source>The taps prove nothing: by chance the current would return as soon after them with a probability of {0}</source>
        <translation>Das Klopfen beweist nichts: zufällig käme der Strom mit einer Wahrscheinlichkeit von {0} ebenso bald danach wieder</translation>
    </message>
    <message>
        <source>The times of {0} agree to ±{1} (k=2): an edge of one against an edge of the other is known no better than that.</source>
        <translation>Die Zeiten von {0} passen auf ±{1} (k=2) zueinander: Genauer ist eine Flanke des einen gegen eine des anderen nicht bekannt.</translation>
    </message>
    <message>
        <source>The zero of {0} is in force and in this recording, but could not be stored for the next one: the folder of your settings can&apos;t be written. Take it again next time.</source>
        <translation>Der Nullpunkt von {0} gilt und steht in dieser Aufzeichnung, konnte aber nicht für die nächste aufbewahrt werden: der Ordner der Einstellungen ist nicht beschreibbar. Beim nächsten Mal neu nehmen.</translation>
    </message>
    <message>
        <source>The zip file itself is not, to the byte, as it was made: it was damaged, or packed anew by another program.</source>
        <translation>Die Zip-Datei selbst ist nicht aufs Byte so, wie sie gemacht wurde: sie wurde beschädigt oder von einem anderen Programm neu gepackt.</translation>
    </message>
    <message>
        <source>The zip has a comment, which no list covers.</source>
        <translation>Das Zip hat einen Kommentar, den keine Liste erfasst.</translation>
    </message>
    <message>
        <source>The zip holds bytes {0} that belong to no file; other programs may see others there.</source>
        <translation>Das Zip enthält Bytes {0}, die zu keiner Datei gehören; andere Programme können dort andere sehen.</translation>
    </message>
    <message>
        <source>The {0} losses at speed {1} come evenly, every {2} s: if anything pulses this feed, readings every {3} without averaging would show the same beat, and nothing need be lost. State the controller&apos;s kind in the limits, or read with a meter that averages.</source>
        <translation>Die {0} Ausfälle auf Stufe {1} kommen gleichmäßig, alle {2} s: wird diese Versorgung getaktet, zeigten Messwerte alle {3} ohne Mittelung denselben Takt, ohne dass etwas ausfällt. Die Art des Reglers in den Grenzwerten angeben oder mit einem mittelnden Messgerät messen.</translation>
    </message>
    <message>
        <source>The {0} reads {1} V from {2} s {3} instead of {4} V, but the current came back to {5} A: its probe has moved, not the circuit. Fix the probe and measure again before trusting that voltage.</source>
        <translation>{0} zeigt {1} V ab {2} s {3} statt {4} V, aber der Strom kam auf {5} A zurück: die Messspitze hat sich bewegt, nicht der Kreis. Die Spitze befestigen und neu messen, bevor man dieser Spannung traut.</translation>
    </message>
    <message>
        <source>Their pattern comes again every {0} ripples, which may be a whole turn, half of one or less: neither bars nor speed is told.</source>
        <translation>Ihr Muster kehrt alle {0} Wellen wieder, was eine ganze Umdrehung, eine halbe oder weniger sein kann: weder Lamellen noch Drehzahl werden genannt.</translation>
    </message>
    <message>
        <source>Then: {0}</source>
        <translation>Danach: {0}</translation>
    </message>
    <message>
        <source>There are deep notches, but between them a ripple of less than {0} % of the mean, or of no clear count: too faint to count bars by. At a lower speed the motor&apos;s winding smooths it less; look there. A pulsed feed would look the same.</source>
        <translation>Es gibt tiefe Kerben, dazwischen aber eine Welligkeit unter {0} % des Mittels oder ohne klare Zahl: zu schwach, um Lamellen zu zählen. Auf kleinerer Stufe glättet die Wicklung weniger; dort nachsehen. Eine getaktete Versorgung sähe gleich aus.</translation>
    </message>
    <message>
        <source>There are fewer than ten readings a ripple: its height is shown too low.</source>
        <translation>Es sind weniger als zehn Messwerte je Welle: ihre Höhe erscheint zu niedrig.</translation>
    </message>
    <message>
        <source>There is a line at {0} Hz, but at {1} readings/s a ripple of {2} Hz would look the same; {3} readings/s would tell.</source>
        <translation>Bei {0} Hz ist eine Linie, aber bei {1} Messwerten/s sähe eine Welligkeit von {2} Hz gleich aus; {3} Messwerte/s würden es klären.</translation>
    </message>
    <message>
        <source>There is something behind the end of the PDF.</source>
        <translation>Hinter dem Ende des PDF steht noch etwas.</translation>
    </message>
    <message>
        <source>These recordings can&apos;t be compared. {0}</source>
        <translation>Diese Aufzeichnungen lassen sich nicht vergleichen. {0}</translation>
    </message>
    <message>
        <source>They have no serial number to tell them apart: unplug all but one.</source>
        <translation>Ohne Seriennummer sind sie nicht zu unterscheiden: alle bis auf eines abziehen.</translation>
    </message>
    <message>
        <source>They must differ.</source>
        <translation>Sie müssen verschieden sein.</translation>
    </message>
    <message>
        <source>This recording can&apos;t be compared. {0}</source>
        <translation>Diese Aufzeichnung lässt sich nicht vergleichen. {0}</translation>
    </message>
    <message>
        <source>Three-channel line logger with its own time column, 50 readings/s (generic)</source>
        <translation>Dreikanal-Logger mit eigener Zeitspalte, 50 Messwerte/s (allgemein)</translation>
    </message>
    <message>
        <source>Three-channel line logger, 50 readings/s (generic)</source>
        <translation>Dreikanal-Logger, 50 Messwerte/s (allgemein)</translation>
    </message>
    <message>
        <source>To be weighed before the motor is blamed.</source>
        <translation>Abzuwägen, bevor dem Motor die Schuld gegeben wird.</translation>
    </message>
    <message>
        <source>Too many open files</source>
        <translation>zu viele offene Dateien</translation>
    </message>
    <message>
        <source>Too much current at more than one speed: {0}.</source>
        <translation>Zu viel Strom auf mehr als einer Stufe: {0}.</translation>
    </message>
    <message>
        <source>Too slow for the commutator&apos;s ripple: {0} readings/s; it takes {1} at the least, and {2} to have {3} on each ripple of any cabin fan.</source>
        <translation>Zu langsam für die Kollektorwelligkeit: {0} Messwerte/s; nötig sind mindestens {1}, und {2} für {3} je Welle eines jeden Innenraumgebläses.</translation>
    </message>
    <message>
        <source>Transport endpoint is not connected</source>
        <translation>das Netzlaufwerk ist nicht verbunden</translation>
    </message>
    <message>
        <source>Try the passphrase again.</source>
        <translation>Das Kennwort noch einmal versuchen.</translation>
    </message>
    <message>
        <source>Two nodes need two places.</source>
        <translation>Zwei Knoten brauchen zwei Plätze.</translation>
    </message>
    <message>
        <source>Use letters, digits, blanks and hyphens, at most {0}.</source>
        <translation>Buchstaben, Ziffern, Leerzeichen und Bindestriche, höchstens {0}.</translation>
    </message>
    <message>
        <source>Use letters, digits, dot, dash and underscore only.</source>
        <translation>Nur Buchstaben, Ziffern, Punkt, Bindestrich und Unterstrich verwenden.</translation>
    </message>
    <message>
        <source>Voltage drop across each pin with the fan on high; look for melted plastic and loose pins.</source>
        <translation>Spannungsfall über jedem Stift, Gebläse auf höchster Stufe; auf geschmolzenen Kunststoff und lose Stifte achten.</translation>
    </message>
    <message>
        <source>Voltage drop along each of them with the fan on high.</source>
        <translation>Spannungsfall entlang jeder von ihnen, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop along each stretch with the fan on high; wiggle while watching.</source>
        <translation>Spannungsfall entlang jeder Strecke, Gebläse auf höchster Stufe; beim Zusehen wackeln.</translation>
    </message>
    <message>
        <source>Voltage drop from the body to the battery negative post with the fan on high.</source>
        <translation>Spannungsfall von der Karosserie zum Minuspol der Batterie, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop from the controller plug to the motor plug with the fan on high.</source>
        <translation>Spannungsfall vom Reglerstecker zum Motorstecker, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop from the controller&apos;s ground pin to the battery negative post with the fan on high.</source>
        <translation>Spannungsfall vom Massestift des Reglers zum Minuspol der Batterie, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop from the module&apos;s ground pin to the battery negative post with the fan on high.</source>
        <translation>Spannungsfall vom Massestift des Moduls zum Minuspol der Batterie, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop from the motor plug to the controller plug with the fan on high.</source>
        <translation>Spannungsfall vom Motorstecker zum Reglerstecker, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop from the motor plug to the pack&apos;s plug with the fan on high.</source>
        <translation>Spannungsfall vom Motorstecker zum Stecker der Vorwiderstände, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop from the motor plug&apos;s return wire to the battery negative post with the fan on high.</source>
        <translation>Spannungsfall von der Minusleitung am Motorstecker zum Minuspol der Batterie, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop from the pack&apos;s plug to the motor plug with the fan on high.</source>
        <translation>Spannungsfall vom Stecker der Vorwiderstände zum Motorstecker, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop from the switch&apos;s ground wire to the battery negative post with the fan on high.</source>
        <translation>Spannungsfall von der Masseleitung des Schalters zum Minuspol der Batterie, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltage drop of each wire from plug to plug with the fan on high.</source>
        <translation>Spannungsfall jeder Leitung von Stecker zu Stecker, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>Voltmeter read by eye and typed by hand (generic)</source>
        <translation>Voltmeter, abgelesen und von Hand getippt (allgemein)</translation>
    </message>
    <message>
        <source>What is in it is as it was packed.</source>
        <translation>Was darin ist, ist wie gepackt.</translation>
    </message>
    <message>
        <source>What it was imported from was one part: what came before is not in it.</source>
        <translation>Eingelesen wurde sie aus einem Teil einer Aufzeichnung: Was davor war, ist nicht darin.</translation>
    </message>
    <message>
        <source>What the pages of a PDF show is not covered by the signature inside it, only the files it carries are: hold figures that matter against those, or check the whole pack.</source>
        <translation>Was die Seiten eines PDF zeigen, ist von der Unterschrift darin nicht erfasst, nur die Dateien, die es trägt: Zahlen, auf die es ankommt, damit vergleichen, oder das ganze Paket prüfen.</translation>
    </message>
    <message>
        <source>What was drawn at the speeds marked {0} is what the speeds {1} should draw: wrong marks look the same. If they are wrong, correct them and judge again</source>
        <translation>Was bei den als {0} markierten Stufen floss, sollen die Stufen {1} ziehen: falsche Markierungen sehen genauso aus. Sind sie falsch, Markierungen berichtigen und neu urteilen lassen</translation>
    </message>
    <message>
        <source>What was read can&apos;t open {0}, but {1}: can&apos;t tell; a meter and a clamp of a higher range would settle it.</source>
        <translation>Was gelesen wurde, kann {0} nicht auslösen, aber {1}: nicht zu sagen; Messgerät und Zange mit größerem Messbereich würden es klären.</translation>
    </message>
    <message>
        <source>What was read can&apos;t open {0}, but {1}; it may reach {2} A for up to {3} s: can&apos;t tell; a meter and a clamp of a higher range would settle it.</source>
        <translation>Was gelesen wurde, kann {0} nicht auslösen, aber {1}; sie kann {2} A für bis zu {3} s erreichen: nicht zu sagen; Messgerät und Zange mit größerem Messbereich würden es klären.</translation>
    </message>
    <message>
        <source>What was stated of {0} is in this recording, but could not be kept for the next one: the folder of your settings can&apos;t be written.</source>
        <translation>Was zu {0} angegeben wurde, steht in dieser Aufzeichnung, konnte aber nicht für die nächste aufbewahrt werden: der Ordner der Einstellungen ist nicht beschreibbar.</translation>
    </message>
    <message>
        <source>What was written before can still be reviewed and exported.</source>
        <translation>Was vorher geschrieben wurde, lässt sich weiter beurteilen und exportieren.</translation>
    </message>
    <message>
        <source>When it stands again: feed within 0.7 V of the battery, return near 0 V, current 0 A; then, key off, turn the wheel a little by hand: if it starts now, brush or commutator is bad.</source>
        <translation>Wenn er wieder steht: Plus höchstens 0,7 V unter der Batterie, Minus nahe 0 V, Strom 0 A; dann, Zündung aus, das Rad ein wenig von Hand drehen: läuft er jetzt an, ist Bürste oder Kollektor schlecht.</translation>
    </message>
    <message>
        <source>With the fan off and no voltage across the motor the current reads {0} A ({1} s to {2} s): the zero of the clamp is off, and all currents may be off by as much, which the uncertainties do not hold. With the clamp empty and shut, take its zero and measure again.</source>
        <translation>Bei ausgeschaltetem Gebläse und ohne Spannung am Motor zeigt der Strom {0} A ({1} s bis {2} s): der Nullpunkt der Zange stimmt nicht, und alle Ströme können um so viel falsch sein, was die Unsicherheiten nicht enthalten. Bei leerer, geschlossener Zange den Nullpunkt nehmen und neu messen.</translation>
    </message>
    <message>
        <source>Without it nobody knows what the columns are; use a copy of the folder.</source>
        <translation>Ohne sie weiß niemand, was die Spalten sind; eine Kopie des Ordners benutzen.</translation>
    </message>
    <message>
        <source>Without {0} it can&apos;t be told whether these are as they were packed, or were added: {1}{2}.</source>
        <translation>Ohne {0} lässt sich nicht sagen, ob diese wie gepackt sind oder hinzugefügt wurden: {1}{2}.</translation>
    </message>
    <message>
        <source>Write a point as decimal mark, such as 1.5, and no mark between thousands.</source>
        <translation>Als Dezimalzeichen einen Punkt schreiben, etwa 1.5, und kein Zeichen zwischen Tausendern.</translation>
    </message>
    <message>
        <source>Write a port&apos;s name, or socket://HOST:PORT, or rfc2217://HOST:PORT.</source>
        <translation>Den Namen eines Anschlusses schreiben, oder socket://HOST:PORT, oder rfc2217://HOST:PORT.</translation>
    </message>
    <message>
        <source>Write a port&apos;s name, socket://HOST:PORT, rfc2217://HOST:PORT, hid://VVVV:PPPP[/SERIAL], usbtmc://VVVV:PPPP[/SERIAL] or visa://RESOURCE.</source>
        <translation>Den Namen eines Anschlusses schreiben, oder socket://HOST:PORT, rfc2217://HOST:PORT, hid://VVVV:PPPP[/SERIAL], usbtmc://VVVV:PPPP[/SERIAL] oder visa://RESOURCE.</translation>
    </message>
    <message>
        <source>Write {0}@{1} for it.</source>
        <translation>Dafür {0}@{1} schreiben.</translation>
    </message>
    <message>
        <source>[left out]</source>
        <translation>[weggelassen]</translation>
    </message>
    <message>
        <source>a Modbus device answers, but not with the registers of a profile ({0}). Copy the nearest profile and put in the register map of its manual.</source>
        <translation>ein Modbus-Gerät antwortet, aber nicht mit den Registern eines Profils ({0}). Das nächstliegende Profil kopieren und die Registertabelle des Handbuchs eintragen.</translation>
    </message>
    <message>
        <source>a chafed wire, a shorted coil</source>
        <translation>eine durchgescheuerte Leitung, eine kurzgeschlossene Spule</translation>
    </message>
    <message>
        <source>a dragging motor has heated the plug</source>
        <translation>ein schwergängiger Motor hat den Stecker erhitzt</translation>
    </message>
    <message>
        <source>a dragging motor has overheated the resistor pack</source>
        <translation>ein schwergängiger Motor hat die Vorwiderstände überhitzt</translation>
    </message>
    <message>
        <source>a dragging motor has overloaded the controller</source>
        <translation>ein schwergängiger Motor hat den Regler überlastet</translation>
    </message>
    <message>
        <source>a dragging motor has overloaded the module</source>
        <translation>ein schwergängiger Motor hat das Modul überlastet</translation>
    </message>
    <message>
        <source>a drop is judged at speed {0}, where the current is highest</source>
        <translation>ein Spannungsfall auf Stufe {0} beurteilt wird, wo der Strom am höchsten ist</translation>
    </message>
    <message>
        <source>a fault in it ({0} at {1} s)</source>
        <translation>ein Fehler darin ({0} bei {1} s)</translation>
    </message>
    <message>
        <source>a fuse is out</source>
        <translation>eine Sicherung gezogen ist</translation>
    </message>
    <message>
        <source>a hundred times</source>
        <translation>das Hundertfache</translation>
    </message>
    <message>
        <source>a jumper is in</source>
        <translation>eine Brücke gesetzt ist</translation>
    </message>
    <message>
        <source>a meter is to be doubted</source>
        <translation>an einem Messgerät ist zu zweifeln</translation>
    </message>
    <message>
        <source>a meter repeated one reading meanwhile</source>
        <translation>ein Messgerät wiederholte derweil einen Messwert</translation>
    </message>
    <message>
        <source>a meter&apos;s dial was turned</source>
        <translation>der Drehschalter eines Messgeräts wurde gedreht</translation>
    </message>
    <message>
        <source>a meter&apos;s own battery was low</source>
        <translation>die Batterie eines Messgeräts war schwach</translation>
    </message>
    <message>
        <source>a motor that slows down to speed {0}, marked at {1} s, draws nothing for a while either</source>
        <translation>auch ein Motor, der auf Stufe {0} langsamer wird, markiert bei {1} s, zieht eine Weile nichts</translation>
    </message>
    <message>
        <source>a pack holds {0} photos at most</source>
        <translation>ein Paket fasst höchstens {0} Fotos</translation>
    </message>
    <message>
        <source>a plug is off</source>
        <translation>ein Stecker abgezogen ist</translation>
    </message>
    <message>
        <source>a reading comes every {0} s, but the profile says interval_s = {1}: correct it, or short dropouts are judged wrongly</source>
        <translation>ein Messwert kommt alle {0} s, das Profil sagt aber interval_s = {1}: berichtigen, sonst werden kurze Aussetzer falsch beurteilt</translation>
    </message>
    <message>
        <source>a reading every {0} s, from {1} points{2}</source>
        <translation>ein Messwert alle {0} s, aus {1} Punkten{2}</translation>
    </message>
    <message>
        <source>a reading must be a finite number.</source>
        <translation>ein Messwert muss eine endliche Zahl sein.</translation>
    </message>
    <message>
        <source>a recording is running</source>
        <translation>eine Aufzeichnung läuft</translation>
    </message>
    <message>
        <source>a scale can&apos;t be 0.</source>
        <translation>eine Skalierung kann nicht 0 sein.</translation>
    </message>
    <message>
        <source>a seized motor has opened the fuse</source>
        <translation>ein festsitzender Motor hat die Sicherung ausgelöst</translation>
    </message>
    <message>
        <source>a seized or dragging motor, a chafed wire</source>
        <translation>ein festsitzender oder schwergängiger Motor, eine durchgescheuerte Leitung</translation>
    </message>
    <message>
        <source>a unit can&apos;t be told at a probability of {0}.</source>
        <translation>eine Einheit lässt sich bei einer Wahrscheinlichkeit von {0} nicht nennen.</translation>
    </message>
    <message>
        <source>a usual clamp, ±({0} % + {1} A), as none was stated</source>
        <translation>eine übliche Zange, ±({0} % + {1} A), da keine angegeben wurde</translation>
    </message>
    <message>
        <source>a usual hand meter, ±({0} % + {1} V), as none was stated</source>
        <translation>ein übliches Handmessgerät, ±({0} % + {1} V), da keines angegeben wurde</translation>
    </message>
    <message>
        <source>a voltage is more than such a circuit can have</source>
        <translation>eine Spannung ist höher, als ein solcher Stromkreis sie haben kann</translation>
    </message>
    <message>
        <source>a voltage probe had come off</source>
        <translation>eine Spannungsmessspitze war ab</translation>
    </message>
    <message>
        <source>a voltage reads negative: its leads are the wrong way round</source>
        <translation>eine Spannung liest sich negativ: ihre Leitungen sind vertauscht</translation>
    </message>
    <message>
        <source>a zero is being taken already.</source>
        <translation>es wird schon genullt.</translation>
    </message>
    <message>
        <source>a {0} gives a voltage, but channel {1} reads amperes itself.</source>
        <translation>Messgröße passt nicht: {0} gibt eine Spannung, aber Kanal {1} liest selbst Ampere.</translation>
    </message>
    <message>
        <source>a {0} gives a {1}, but {2} needs a {3}.</source>
        <translation>Messgröße passt nicht: {0} gibt {1}, {2} braucht {3}.</translation>
    </message>
    <message>
        <source>about {0} V, as the changes of speed show</source>
        <translation>etwa {0} V, wie die Stufenwechsel zeigen</translation>
    </message>
    <message>
        <source>about {0} {1}</source>
        <translation>etwa {0} {1}</translation>
    </message>
    <message>
        <source>about {0} {1} ({2} to {3})</source>
        <translation>etwa {0} {1} ({2} bis {3})</translation>
    </message>
    <message>
        <source>above {0} {1}</source>
        <translation>über {0} {1}</translation>
    </message>
    <message>
        <source>acknowledge: it works on it and has no answer yet</source>
        <translation>Empfang bestätigt: es arbeitet daran und hat noch keine Antwort</translation>
    </message>
    <message>
        <source>across the motor&apos;s own terminals</source>
        <translation>direkt über den Anschlüssen des Motors</translation>
    </message>
    <message>
        <source>added, as a linear sum</source>
        <translation>als lineare Summe dazugezählt</translation>
    </message>
    <message>
        <source>all currents are brought to one voltage; the farther, the wider the uncertainty</source>
        <translation>alle Ströme werden auf eine Spannung umgerechnet; je weiter, desto größer die Unsicherheit</translation>
    </message>
    <message>
        <source>all else</source>
        <translation>alles andere</translation>
    </message>
    <message>
        <source>allowed up to {0} A</source>
        <translation>erlaubt bis {0} A</translation>
    </message>
    <message>
        <source>allowed {0} %: {1}{2}</source>
        <translation>erlaubt {0} %: {1}{2}</translation>
    </message>
    <message>
        <source>allowed {0} A or more</source>
        <translation>erlaubt {0} A oder mehr</translation>
    </message>
    <message>
        <source>and came back</source>
        <translation>und kam zurück</translation>
    </message>
    <message>
        <source>and more</source>
        <translation>und mehr</translation>
    </message>
    <message>
        <source>and was still so at the step&apos;s end</source>
        <translation>und war am Ende der Stufe noch so</translation>
    </message>
    <message>
        <source>another device is there now: {0}</source>
        <translation>dort ist jetzt ein anderes Gerät: {0}</translation>
    </message>
    <message>
        <source>another instrument answers now: {0}</source>
        <translation>jetzt antwortet ein anderes Gerät: {0}</translation>
    </message>
    <message>
        <source>another program has just begun a recording there.</source>
        <translation>ein anderes Programm hat dort gerade eine Aufzeichnung begonnen.</translation>
    </message>
    <message>
        <source>another program holds it.</source>
        <translation>ein anderes Programm hält es offen.</translation>
    </message>
    <message>
        <source>another program holds this instrument.</source>
        <translation>ein anderes Programm hält dieses Instrument offen.</translation>
    </message>
    <message>
        <source>another program holds this port.</source>
        <translation>ein anderes Programm hält diesen Anschluss offen.</translation>
    </message>
    <message>
        <source>another program holds this port: {0}.</source>
        <translation>ein anderes Programm hält diesen Anschluss offen: {0}.</translation>
    </message>
    <message>
        <source>another range, steps of {0} {1}</source>
        <translation>ein anderer Bereich, Schritte von {0} {1}</translation>
    </message>
    <message>
        <source>another scale</source>
        <translation>eine andere Skalierung</translation>
    </message>
    <message>
        <source>answers *IDN?</source>
        <translation>beantwortet *IDN?</translation>
    </message>
    <message>
        <source>answers *IDN? and {0}</source>
        <translation>beantwortet *IDN? und {0}</translation>
    </message>
    <message>
        <source>answers *IDN? as {0}, but no profile fits its readings. Copy the nearest SCPI profile, and put in its query and channels; `meterlog check-profile` checks it.</source>
        <translation>beantwortet *IDN? als {0}, aber kein Profil passt zu seinen Messwerten. Das nächstliegende SCPI-Profil kopieren und Abfrage und Kanäle eintragen; `meterlog check-profile` prüft es.</translation>
    </message>
    <message>
        <source>answers SYST:ERR? with {0}.</source>
        <translation>antwortet auf SYST:ERR? mit {0}.</translation>
    </message>
    <message>
        <source>answers {0}</source>
        <translation>antwortet {0}</translation>
    </message>
    <message>
        <source>are one and the same</source>
        <translation>sind ein und dasselbe</translation>
    </message>
    <message>
        <source>are {0}</source>
        <translation>sind {0}</translation>
    </message>
    <message>
        <source>are {0} alone, where every voltage is 0</source>
        <translation>sind allein {0}, wo jede Spannung 0 ist</translation>
    </message>
    <message>
        <source>are {0}, but a {1} has {2}</source>
        <translation>sind {0}, aber {1} hat {2}</translation>
    </message>
    <message>
        <source>as measured, not at {0} V: its motor voltage is not near that</source>
        <translation>wie gemessen, nicht bei {0} V: seine Motorspannung liegt nicht in der Nähe</translation>
    </message>
    <message>
        <source>as measured: the motor voltage is not known on all sides, so that the supply alone may make {0} %</source>
        <translation>wie gemessen: die Motorspannung ist nicht auf allen Seiten bekannt, sodass allein die Versorgung {0} % ausmachen kann</translation>
    </message>
    <message>
        <source>as read</source>
        <translation>wie abgelesen</translation>
    </message>
    <message>
        <source>as usual</source>
        <translation>wie üblich</translation>
    </message>
    <message>
        <source>ask {0}</source>
        <translation>{0} fragen</translation>
    </message>
    <message>
        <source>asking *IDN?{0}</source>
        <translation>fragt *IDN?{0}</translation>
    </message>
    <message>
        <source>asking for one reading</source>
        <translation>fragt nach einem Messwert</translation>
    </message>
    <message>
        <source>assumed, 100 parts in a million</source>
        <translation>angenommen, 100 Millionstel</translation>
    </message>
    <message>
        <source>at a time that is not known</source>
        <translation>zu einer unbekannten Zeit</translation>
    </message>
    <message>
        <source>at its beginning</source>
        <translation>an seinem Anfang</translation>
    </message>
    <message>
        <source>at its end</source>
        <translation>an seinem Ende</translation>
    </message>
    <message>
        <source>at the battery</source>
        <translation>an der Batterie</translation>
    </message>
    <message>
        <source>at the same instant (±{0} s)</source>
        <translation>im selben Augenblick (±{0} s)</translation>
    </message>
    <message>
        <source>at this speed the pattern of the turn doesn&apos;t stand out, so no bar is told</source>
        <translation>auf dieser Stufe hebt sich das Muster der Umdrehung nicht ab, daher wird keine Lamelle genannt</translation>
    </message>
    <message>
        <source>at times</source>
        <translation>zeitweise</translation>
    </message>
    <message>
        <source>at {0}</source>
        <translation>bei {0}</translation>
    </message>
    <message>
        <source>at {0} V across the motor after {1} V, so that volts by amperes fell to {2} %: consistent with drag (bearing, wheel){3}</source>
        <translation>bei {0} V am Motor nach {1} V, sodass Volt durch Ampere auf {2} % fielen: passend zu Schwergang (Lager, Rad){3}</translation>
    </message>
    <message>
        <source>at {0} V, by the exponent of each</source>
        <translation>bei {0} V, nach dem Exponenten jedes einzelnen</translation>
    </message>
    <message>
        <source>at {0} V, {1}</source>
        <translation>bei {0} V, {1}</translation>
    </message>
    <message>
        <source>at {0} s</source>
        <translation>bei {0} s</translation>
    </message>
    <message>
        <source>at {0} s was put back</source>
        <translation>bei {0} s wurde wieder eingesetzt</translation>
    </message>
    <message>
        <source>at {0} s was withdrawn and counts for nothing</source>
        <translation>bei {0} s wurde zurückgenommen und zählt nicht</translation>
    </message>
    <message>
        <source>back after</source>
        <translation>wieder da nach</translation>
    </message>
    <message>
        <source>back after {0} s</source>
        <translation>wieder da nach {0} s</translation>
    </message>
    <message>
        <source>basis = {0}</source>
        <translation>Grundlage = {0}</translation>
    </message>
    <message>
        <source>battery and its clamps</source>
        <translation>Batterie und ihre Polklemmen</translation>
    </message>
    <message>
        <source>battery is good</source>
        <translation>Batterie ist gut</translation>
    </message>
    <message>
        <source>battery negative lead</source>
        <translation>Minuskabel der Batterie</translation>
    </message>
    <message>
        <source>battery negative lead to the body</source>
        <translation>Minuskabel der Batterie zur Karosserie</translation>
    </message>
    <message>
        <source>battery negative post</source>
        <translation>Minuspol der Batterie</translation>
    </message>
    <message>
        <source>battery positive post</source>
        <translation>Pluspol der Batterie</translation>
    </message>
    <message>
        <source>before and after differ by {0} A; less than {1} A is asked for.</source>
        <translation>vorher und nachher weichen um {0} A ab; verlangt ist weniger als {1} A.</translation>
    </message>
    <message>
        <source>before it was exported, and imported here:</source>
        <translation>bevor sie exportiert und hier eingelesen wurde:</translation>
    </message>
    <message>
        <source>behind the relay {0} V were left: fuse, relay or its coil</source>
        <translation>hinter dem Relais blieben {0} V: Sicherung, Relais oder seine Spule</translation>
    </message>
    <message>
        <source>behind {0}</source>
        <translation>hinter {0}</translation>
    </message>
    <message>
        <source>behind {0}: </source>
        <translation>hinter {0}: </translation>
    </message>
    <message>
        <source>behind {0}; the sensor&apos;s own error not in</source>
        <translation>hinter {0}; der Eigenfehler des Aufnehmers nicht darin</translation>
    </message>
    <message>
        <source>being recorded</source>
        <translation>wird gerade aufgezeichnet</translation>
    </message>
    <message>
        <source>below {0} {1}</source>
        <translation>unter {0} {1}</translation>
    </message>
    <message>
        <source>bench {0}</source>
        <translation>Prüfstand {0}</translation>
    </message>
    <message>
        <source>between battery and motor feed</source>
        <translation>zwischen Batterie und Plus des Motors</translation>
    </message>
    <message>
        <source>between controller ground and battery negative</source>
        <translation>zwischen Masse des Reglers und Minuspol der Batterie</translation>
    </message>
    <message>
        <source>between motor return and battery negative, controller included,</source>
        <translation>zwischen Minus des Motors und Minuspol der Batterie, mit Regler,</translation>
    </message>
    <message>
        <source>between {0} A and {1} A</source>
        <translation>zwischen {0} A und {1} A</translation>
    </message>
    <message>
        <source>body at the control head</source>
        <translation>Karosserie am Bedienteil</translation>
    </message>
    <message>
        <source>body at the controller&apos;s ground joint</source>
        <translation>Karosserie am Massepunkt des Reglers</translation>
    </message>
    <message>
        <source>body at the high relay&apos;s ground</source>
        <translation>Karosserie an der Masse des Relais für höchste Stufe</translation>
    </message>
    <message>
        <source>body at the module&apos;s ground joint</source>
        <translation>Karosserie am Massepunkt des Moduls</translation>
    </message>
    <message>
        <source>body at the motor&apos;s ground joint</source>
        <translation>Karosserie am Massepunkt des Motors</translation>
    </message>
    <message>
        <source>body at the relay&apos;s ground</source>
        <translation>Karosserie an der Masse des Relais</translation>
    </message>
    <message>
        <source>body at the speed switch&apos;s ground joint</source>
        <translation>Karosserie am Massepunkt des Stufenschalters</translation>
    </message>
    <message>
        <source>body beside the controller&apos;s ground joint</source>
        <translation>Karosserie neben dem Massepunkt des Reglers</translation>
    </message>
    <message>
        <source>body beside the module&apos;s ground joint</source>
        <translation>Karosserie neben dem Massepunkt des Moduls</translation>
    </message>
    <message>
        <source>body beside the motor&apos;s ground joint</source>
        <translation>Karosserie neben dem Massepunkt des Motors</translation>
    </message>
    <message>
        <source>body beside the speed switch&apos;s ground joint</source>
        <translation>Karosserie neben dem Massepunkt des Stufenschalters</translation>
    </message>
    <message>
        <source>body to the battery negative post</source>
        <translation>Karosserie bis Minuspol der Batterie</translation>
    </message>
    <message>
        <source>broken off</source>
        <translation>abgebrochen</translation>
    </message>
    <message>
        <source>broken winding, a loose pin of the socket</source>
        <translation>gebrochene Wicklung, ein loser Stift des Sockels</translation>
    </message>
    <message>
        <source>brought to {0} V by {1}</source>
        <translation>umgerechnet auf {0} V, durch {1}</translation>
    </message>
    <message>
        <source>burnt contact of the switch</source>
        <translation>verbrannter Kontakt des Schalters</translation>
    </message>
    <message>
        <source>burnt contact, a loose pin of the socket</source>
        <translation>verbrannter Kontakt, ein loser Stift des Sockels</translation>
    </message>
    <message>
        <source>burnt contact: motor current too high</source>
        <translation>verbrannter Kontakt: Motorstrom zu hoch</translation>
    </message>
    <message>
        <source>burnt or loose fuse holder</source>
        <translation>verbrannter oder loser Sicherungshalter</translation>
    </message>
    <message>
        <source>by each motor&apos;s own curve</source>
        <translation>nach der eigenen Kurve jedes Motors</translation>
    </message>
    <message>
        <source>by the usual exponent</source>
        <translation>nach dem üblichen Exponenten</translation>
    </message>
    <message>
        <source>by those limits the good ones were found in order; other limits find others so</source>
        <translation>nach diesen Grenzwerten gelten die guten als in Ordnung; andere Grenzwerte finden andere so</translation>
    </message>
    <message>
        <source>bytes come that no profile understands: {0}. Check what is connected there.</source>
        <translation>Bytes kommen, die kein Profil versteht: {0}. Prüfen, was dort angeschlossen ist.</translation>
    </message>
    <message>
        <source>bytes come, none is understood at {0}: the line speed is probably another one. Look for it in the meter&apos;s menu or manual, and set baud under [link] in a copy of the profile.</source>
        <translation>Bytes kommen, bei {0} ist keines zu verstehen: die Übertragungsrate ist wohl eine andere. Im Menü oder Handbuch des Messgeräts nachsehen und baud unter [link] in einer Kopie des Profils setzen.</translation>
    </message>
    <message>
        <source>came late and mended: {0}</source>
        <translation>spät gekommen und berichtigt: {0}</translation>
    </message>
    <message>
        <source>came too late for their own times: {0}</source>
        <translation>zu spät für die eigene Zeit gekommen: {0}</translation>
    </message>
    <message>
        <source>can be changed by others, who could put a key of theirs there.</source>
        <translation>kann von anderen geändert werden, die dort ihren eigenen Schlüssel ablegen könnten.</translation>
    </message>
    <message>
        <source>can&apos;t be added to: {0}</source>
        <translation>kann nicht ergänzt werden: {0}</translation>
    </message>
    <message>
        <source>can&apos;t be amended without {0}.</source>
        <translation>kann nicht geändert werden ohne: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be kept.</source>
        <translation>kann nicht aufbewahrt werden.</translation>
    </message>
    <message>
        <source>can&apos;t be looked into: {0}.</source>
        <translation>lässt sich nicht ansehen: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be made: {0}.</source>
        <translation>lässt sich nicht anlegen: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be measured: there is no test point at {0}</source>
        <translation>lässt sich nicht messen: bei {0} ist kein Messpunkt</translation>
    </message>
    <message>
        <source>can&apos;t be opened: the file is damaged.</source>
        <translation>lässt sich nicht öffnen: die Datei ist beschädigt.</translation>
    </message>
    <message>
        <source>can&apos;t be opened: the passphrase is wrong, or the file is damaged.</source>
        <translation>lässt sich nicht öffnen: das Kennwort ist falsch, oder die Datei ist beschädigt.</translation>
    </message>
    <message>
        <source>can&apos;t be opened: {0}</source>
        <translation>lässt sich nicht öffnen: {0}</translation>
    </message>
    <message>
        <source>can&apos;t be opened: {0}.</source>
        <translation>lässt sich nicht öffnen: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be part of a file&apos;s name.</source>
        <translation>kann nicht Teil eines Dateinamens sein.</translation>
    </message>
    <message>
        <source>can&apos;t be reached: {0}.</source>
        <translation>ist nicht zu erreichen: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be read</source>
        <translation>lässt sich nicht lesen</translation>
    </message>
    <message>
        <source>can&apos;t be read as a PDF: {0}</source>
        <translation>lässt sich nicht als PDF lesen: {0}</translation>
    </message>
    <message>
        <source>can&apos;t be read as a zip: {0}.</source>
        <translation>lässt sich nicht als Zip lesen: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be read or made: {0}.</source>
        <translation>lässt sich nicht lesen oder anlegen: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be read or written: {0}.</source>
        <translation>lässt sich nicht lesen oder schreiben: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be read, so that nobody knows what this recording goes on with.</source>
        <translation>lässt sich nicht lesen, sodass niemand weiß, was diese Aufzeichnung fortsetzt.</translation>
    </message>
    <message>
        <source>can&apos;t be read: {0}.</source>
        <translation>lässt sich nicht lesen: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be sealed: {0}.</source>
        <translation>lässt sich nicht versiegeln: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be the name of a profile.</source>
        <translation>kann kein Name eines Profils sein.</translation>
    </message>
    <message>
        <source>can&apos;t be unpacked: {0}.</source>
        <translation>lässt sich nicht entpacken: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be without a value.</source>
        <translation>kann nicht ohne Wert sein.</translation>
    </message>
    <message>
        <source>can&apos;t be written: {0}.</source>
        <translation>lässt sich nicht schreiben: {0}.</translation>
    </message>
    <message>
        <source>can&apos;t be {0}.</source>
        <translation>kann nicht {0} sein.</translation>
    </message>
    <message>
        <source>can&apos;t go on: {0}</source>
        <translation>kann nicht weiter: {0}</translation>
    </message>
    <message>
        <source>carries no files, so nothing can be checked</source>
        <translation>trägt keine Dateien, es lässt sich also nichts prüfen</translation>
    </message>
    <message>
        <source>chafed wire, a loose pin at the head</source>
        <translation>durchgescheuerte Leitung, ein loser Stift am Bedienteil</translation>
    </message>
    <message>
        <source>chafed, pulled or corroded wire</source>
        <translation>durchgescheuerte, gezogene oder korrodierte Leitung</translation>
    </message>
    <message>
        <source>changed its measuring range by itself: it is blind for a moment each time. Fix the range on the meter.</source>
        <translation>wechselte selbst den Messbereich: jedes Mal ist es einen Augenblick blind. Den Bereich am Gerät fest einstellen.</translation>
    </message>
    <message>
        <source>charge or replace the battery, clean the clamps</source>
        <translation>Batterie laden oder ersetzen, Polklemmen reinigen</translation>
    </message>
    <message>
        <source>charging fault, a consumer left on, old age</source>
        <translation>Ladefehler, ein eingeschalteter Verbraucher, Alter</translation>
    </message>
    <message>
        <source>circuit check of {0}: the profile that was kept with it {1} ({2}): only the one of that name as it now is can stand in.</source>
        <translation>Stromlaufprüfung von {0}: das mit ihr aufbewahrte Profil {1} ({2}): nur das heutige dieses Namens kann dafür stehen.</translation>
    </message>
    <message>
        <source>circuit check of {0}: {1}</source>
        <translation>Stromlaufprüfung von {0}: {1}</translation>
    </message>
    <message>
        <source>circuit check: the entry at {0} is not understood and left out.</source>
        <translation>Stromlaufprüfung: der Eintrag um {0} ist nicht zu verstehen und wird ausgelassen.</translation>
    </message>
    <message>
        <source>circuit check: {0} {1} from {2} s on can&apos;t be judged: the line that said of which circuit is damaged or missing.</source>
        <translation>Stromlaufprüfung: {0} {1} ab {2} s sind nicht zu beurteilen: die Zeile, die den Stromlauf nennt, ist beschädigt oder fehlt.</translation>
    </message>
    <message>
        <source>clean and tighten both ends</source>
        <translation>beide Enden reinigen und festziehen</translation>
    </message>
    <message>
        <source>clean and tighten the joint</source>
        <translation>den Massepunkt reinigen und festziehen</translation>
    </message>
    <message>
        <source>clock of the readings</source>
        <translation>Uhr der Messwerte</translation>
    </message>
    <message>
        <source>coil fuse</source>
        <translation>Spulensicherung</translation>
    </message>
    <message>
        <source>coil fuse (5 A)</source>
        <translation>Spulensicherung (5 A)</translation>
    </message>
    <message>
        <source>coil fuse (7.5 A)</source>
        <translation>Spulensicherung (7,5 A)</translation>
    </message>
    <message>
        <source>coil fuse, load side</source>
        <translation>Spulensicherung, Lastseite</translation>
    </message>
    <message>
        <source>coil fuse, supply side</source>
        <translation>Spulensicherung, Versorgungsseite</translation>
    </message>
    <message>
        <source>column {0}</source>
        <translation>Spalte {0}</translation>
    </message>
    <message>
        <source>command and feedback wires to the control head</source>
        <translation>Ansteuer- und Rückmeldeleitung zum Bedienteil</translation>
    </message>
    <message>
        <source>command wire</source>
        <translation>Ansteuerleitung</translation>
    </message>
    <message>
        <source>command wire to the control head</source>
        <translation>Ansteuerleitung zum Bedienteil</translation>
    </message>
    <message>
        <source>common practice, no source</source>
        <translation>übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <source>commutation frequency</source>
        <translation>Kommutierungsfrequenz</translation>
    </message>
    <message>
        <source>conditions (old / new)</source>
        <translation>Bedingungen (alt / neu)</translation>
    </message>
    <message>
        <source>consistent with drag, more air or a higher voltage at the motor; {0} would settle it</source>
        <translation>passend zu Schwergang, mehr Luft oder höherer Spannung am Motor; {0} würde es klären</translation>
    </message>
    <message>
        <source>consistent with resistance ahead of the motor, or a supply that fell; battery voltage would settle it</source>
        <translation>passend zu Widerstand vor dem Motor oder einer abgesunkenen Versorgung; die Batteriespannung würde es klären</translation>
    </message>
    <message>
        <source>consistent with resistance in the ground wire, or a controller that gave less{0}</source>
        <translation>passend zu Widerstand in der Masseleitung oder einem Regler, der weniger gab{0}</translation>
    </message>
    <message>
        <source>consistent with resistance {0}, poor contact of the brushes or less air; {1} would settle it</source>
        <translation>passend zu Widerstand {0}, schlechtem Kontakt der Bürsten oder weniger Luft; {1} würde es klären</translation>
    </message>
    <message>
        <source>consistent with {0}, or a supply that fell; battery voltage would settle it</source>
        <translation>passend zu: {0}, oder eine abgesunkene Versorgung; die Batteriespannung würde es klären</translation>
    </message>
    <message>
        <source>control head</source>
        <translation>Bedienteil</translation>
    </message>
    <message>
        <source>control head&apos;s feedback input</source>
        <translation>Rückmeldeeingang des Bedienteils</translation>
    </message>
    <message>
        <source>control head&apos;s high relay output</source>
        <translation>Ausgang des Bedienteils für das Relais höchste Stufe</translation>
    </message>
    <message>
        <source>control head, command output</source>
        <translation>Bedienteil, Ausgang Ansteuerung</translation>
    </message>
    <message>
        <source>control head, dash trim off</source>
        <translation>Bedienteil, Armaturenverkleidung abgebaut</translation>
    </message>
    <message>
        <source>control head, feedback input</source>
        <translation>Bedienteil, Eingang Rückmeldung</translation>
    </message>
    <message>
        <source>control head, high relay output</source>
        <translation>Bedienteil, Ausgang Relais höchste Stufe</translation>
    </message>
    <message>
        <source>controller ground and the command would settle it</source>
        <translation>die Masse des Reglers und die Ansteuerung würden es klären</translation>
    </message>
    <message>
        <source>controller ground would settle it</source>
        <translation>die Masse des Reglers würde es klären</translation>
    </message>
    <message>
        <source>controller plug, command pin</source>
        <translation>Reglerstecker, Stift Ansteuerung</translation>
    </message>
    <message>
        <source>controller plug, command wire</source>
        <translation>Reglerstecker, Leitung Ansteuerung</translation>
    </message>
    <message>
        <source>controller plug, feed pin</source>
        <translation>Reglerstecker, Plusstift</translation>
    </message>
    <message>
        <source>controller plug, feed wire</source>
        <translation>Reglerstecker, Plusleitung</translation>
    </message>
    <message>
        <source>controller plug, feedback pin</source>
        <translation>Reglerstecker, Stift Rückmeldung</translation>
    </message>
    <message>
        <source>controller plug, feedback wire</source>
        <translation>Reglerstecker, Leitung Rückmeldung</translation>
    </message>
    <message>
        <source>controller plug, ground pin</source>
        <translation>Reglerstecker, Massestift</translation>
    </message>
    <message>
        <source>controller plug, ground wire</source>
        <translation>Reglerstecker, Masseleitung</translation>
    </message>
    <message>
        <source>controller plug, in the fan housing</source>
        <translation>Reglerstecker, im Gebläsegehäuse</translation>
    </message>
    <message>
        <source>controller plug, motor return pin</source>
        <translation>Reglerstecker, Stift Motor-Minus</translation>
    </message>
    <message>
        <source>controller plug, motor return wire</source>
        <translation>Reglerstecker, Leitung Motor-Minus</translation>
    </message>
    <message>
        <source>controller plug, output pin</source>
        <translation>Reglerstecker, Ausgangsstift</translation>
    </message>
    <message>
        <source>controller plug, output wire</source>
        <translation>Reglerstecker, Ausgangsleitung</translation>
    </message>
    <message>
        <source>controller&apos;s ground wire and joint</source>
        <translation>Masseleitung und Massepunkt des Reglers</translation>
    </message>
    <message>
        <source>controller&apos;s output stage</source>
        <translation>Endstufe des Reglers</translation>
    </message>
    <message>
        <source>controller&apos;s own consumption</source>
        <translation>Eigenverbrauch des Reglers</translation>
    </message>
    <message>
        <source>controller&apos;s pull-down</source>
        <translation>Pull-down des Reglers</translation>
    </message>
    <message>
        <source>controller&apos;s transistor</source>
        <translation>Transistor des Reglers</translation>
    </message>
    <message>
        <source>controller, command pin</source>
        <translation>Regler, Stift Ansteuerung</translation>
    </message>
    <message>
        <source>controller, feed pin</source>
        <translation>Regler, Plusstift</translation>
    </message>
    <message>
        <source>controller, ground pin</source>
        <translation>Regler, Massestift</translation>
    </message>
    <message>
        <source>controller, motor return pin</source>
        <translation>Regler, Stift Motor-Minus</translation>
    </message>
    <message>
        <source>controller, output pin</source>
        <translation>Regler, Ausgangsstift</translation>
    </message>
    <message>
        <source>corroded fuse holder</source>
        <translation>korrodierter Sicherungshalter</translation>
    </message>
    <message>
        <source>corroded or loose clamps</source>
        <translation>korrodierte oder lose Polklemmen</translation>
    </message>
    <message>
        <source>could not be kept on the disk: {0}.</source>
        <translation>konnte nicht auf dem Laufwerk gesichert werden: {0}.</translation>
    </message>
    <message>
        <source>could not be written: the system took nothing.</source>
        <translation>konnte nicht geschrieben werden: das System nahm nichts an.</translation>
    </message>
    <message>
        <source>could not be written: {0}.</source>
        <translation>konnte nicht geschrieben werden: {0}.</translation>
    </message>
    <message>
        <source>current as read</source>
        <translation>Strom wie abgelesen</translation>
    </message>
    <message>
        <source>current of a held rotor at {0} V, extrapolated</source>
        <translation>Strom eines blockierten Läufers bei {0} V, hochgerechnet</translation>
    </message>
    <message>
        <source>current of the module&apos;s feed</source>
        <translation>Strom der Plusleitung des Moduls</translation>
    </message>
    <message>
        <source>data sheet of a 10 A fuse made to ISO 8820-3; for other ratings from memory</source>
        <translation>Datenblatt einer 10-A-Sicherung nach ISO 8820-3; für andere Nennwerte aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>data sheet of a 32 V fuse made to ISO 8820-3</source>
        <translation>Datenblatt einer 32-V-Sicherung nach ISO 8820-3</translation>
    </message>
    <message>
        <source>debris in the wheel, rust, a worn bearing</source>
        <translation>Schmutz im Rad, Rost, ein verschlissenes Lager</translation>
    </message>
    <message>
        <source>device {0} answers function {1}</source>
        <translation>Gerät {0} beantwortet Funktion {1}</translation>
    </message>
    <message>
        <source>device {0}, function {1}</source>
        <translation>Gerät {0}, Funktion {1}</translation>
    </message>
    <message>
        <source>difference from the good ones at speed {0}</source>
        <translation>Unterschied zu den guten auf Stufe {0}</translation>
    </message>
    <message>
        <source>difference of the zeros</source>
        <translation>Unterschied der Nullpunkte</translation>
    </message>
    <message>
        <source>difference {0}</source>
        <translation>Unterschied {0}</translation>
    </message>
    <message>
        <source>digests of rows</source>
        <translation>Prüfsummen der Zeilen</translation>
    </message>
    <message>
        <source>digits of {0} at {1}, {2}</source>
        <translation>Stellen von {0} bei {1}, {2}</translation>
    </message>
    <message>
        <source>does not answer {0} as it is set now</source>
        <translation>beantwortet {0} nicht, so wie es jetzt eingestellt ist</translation>
    </message>
    <message>
        <source>does not answer.</source>
        <translation>antwortet nicht.</translation>
    </message>
    <message>
        <source>does not fit</source>
        <translation>passt nicht</translation>
    </message>
    <message>
        <source>does not follow from {0}: it was changed, or lines before it were taken out or moved.</source>
        <translation>folgt nicht aus {0}: sie wurde geändert, oder Zeilen davor wurden entfernt oder verschoben.</translation>
    </message>
    <message>
        <source>does not follow from {0}: one of the two was changed, or lines before it were taken out.</source>
        <translation>folgt nicht aus {0}: eines von beiden wurde geändert, oder Zeilen davor wurden entfernt.</translation>
    </message>
    <message>
        <source>does not say for which role.</source>
        <translation>sagt nicht, für welche Aufgabe.</translation>
    </message>
    <message>
        <source>does not say which channel plays which role.</source>
        <translation>sagt nicht, welcher Kanal welche Aufgabe hat.</translation>
    </message>
    <message>
        <source>does not say which meter is on which port.</source>
        <translation>sagt nicht, welches Messgerät an welchem Anschluss ist.</translation>
    </message>
    <message>
        <source>does not say which part number it is of.</source>
        <translation>nennt keine Teilenummer.</translation>
    </message>
    <message>
        <source>does not take its setup report.</source>
        <translation>nimmt seine Einstellung nicht an.</translation>
    </message>
    <message>
        <source>drift to the next zero</source>
        <translation>Drift bis zum nächsten Nullen</translation>
    </message>
    <message>
        <source>drop from battery to motor feed</source>
        <translation>Spannungsfall von der Batterie zum Plus des Motors</translation>
    </message>
    <message>
        <source>each reading was taken between its question and its answer</source>
        <translation>jeder Messwert wurde zwischen Frage und Antwort genommen</translation>
    </message>
    <message>
        <source>edit: {0}</source>
        <translation>Änderung: {0}</translation>
    </message>
    <message>
        <source>ends of the count</source>
        <translation>Enden der Zählung</translation>
    </message>
    <message>
        <source>entry {0}</source>
        <translation>Eintrag {0}</translation>
    </message>
    <message>
        <source>equals start_v</source>
        <translation>ist gleich start_v</translation>
    </message>
    <message>
        <source>experimental standard deviation of the mean</source>
        <translation>experimentelle Standardabweichung des Mittelwerts</translation>
    </message>
    <message>
        <source>exponent of current over voltage</source>
        <translation>Exponent von Strom zu Spannung</translation>
    </message>
    <message>
        <source>exponent of current over voltage, {0}</source>
        <translation>Exponent von Strom zu Spannung, {0}</translation>
    </message>
    <message>
        <source>exponent of this motor</source>
        <translation>Exponent dieses Motors</translation>
    </message>
    <message>
        <source>fan constant</source>
        <translation>Gebläsekonstante</translation>
    </message>
    <message>
        <source>fan motor</source>
        <translation>Gebläsemotor</translation>
    </message>
    <message>
        <source>feed and return both moved: more than one cause, or a probe that moved</source>
        <translation>Plus und Minus bewegten sich beide: mehr als eine Ursache, oder eine Messspitze, die sich bewegte</translation>
    </message>
    <message>
        <source>feed and return stayed: consistent with poor contact of the brushes, or less air</source>
        <translation>Plus und Minus blieben: passend zu schlechtem Kontakt der Bürsten oder weniger Luft</translation>
    </message>
    <message>
        <source>feed fell</source>
        <translation>das Plus fiel</translation>
    </message>
    <message>
        <source>feed of the high relay&apos;s coil</source>
        <translation>Versorgung der Spule des Relais höchste Stufe</translation>
    </message>
    <message>
        <source>feed wiring, battery to controller</source>
        <translation>Plusverkabelung, Batterie bis Regler</translation>
    </message>
    <message>
        <source>feed wiring, battery to module</source>
        <translation>Plusverkabelung, Batterie bis Modul</translation>
    </message>
    <message>
        <source>feed wiring, battery to motor plug</source>
        <translation>Plusverkabelung, Batterie bis Motorstecker</translation>
    </message>
    <message>
        <source>feed wiring, battery to speed switch</source>
        <translation>Plusverkabelung, Batterie bis Stufenschalter</translation>
    </message>
    <message>
        <source>feedback wire</source>
        <translation>Rückmeldeleitung</translation>
    </message>
    <message>
        <source>fell</source>
        <translation>fiel</translation>
    </message>
    <message>
        <source>file {0}</source>
        <translation>Datei {0}</translation>
    </message>
    <message>
        <source>files inside</source>
        <translation>Dateien darin</translation>
    </message>
    <message>
        <source>floor of {0}, {1} {2}{3}</source>
        <translation>Grundfehler von {0}, {1} {2}{3}</translation>
    </message>
    <message>
        <source>folders in it lie deeper than can be gone into</source>
        <translation>Ordner darin liegen tiefer, als hineingegangen werden kann</translation>
    </message>
    <message>
        <source>folders in it lie more than {0} levels deep.</source>
        <translation>Ordner darin liegen mehr als {0} Ebenen tief.</translation>
    </message>
    <message>
        <source>folders in it lie more than {0} levels deep: give it as a FOLDER of its own.</source>
        <translation>Ordner darin liegen mehr als {0} Ebenen tief: Ihn als eigenen ORDNER angeben.</translation>
    </message>
    <message>
        <source>follows from {0}, not from {1}: lines were put in, taken out or moved.</source>
        <translation>folgt aus {0}, nicht aus {1}: Zeilen wurden eingefügt, entfernt oder verschoben.</translation>
    </message>
    <message>
        <source>frames of display segments</source>
        <translation>Rahmen von Anzeigesegmenten</translation>
    </message>
    <message>
        <source>from up to {0} {1} to up to {2} {3}, by the readings around it</source>
        <translation>von bis zu {0} {1} auf bis zu {2} {3}, nach den Messwerten ringsum</translation>
    </message>
    <message>
        <source>from {0} V to {1} V</source>
        <translation>von {0} V auf {1} V</translation>
    </message>
    <message>
        <source>fuse and relay box</source>
        <translation>Sicherungs- und Relaiskasten</translation>
    </message>
    <message>
        <source>gain of {0} at {1}, {2} %</source>
        <translation>Verstärkung von {0} bei {1}, {2} %</translation>
    </message>
    <message>
        <source>gateway path unavailable</source>
        <translation>kein Weg durch das Gateway</translation>
    </message>
    <message>
        <source>gateway target device failed to respond</source>
        <translation>das Gerät hinter dem Gateway antwortet nicht</translation>
    </message>
    <message>
        <source>gave way</source>
        <translation>gab nach</translation>
    </message>
    <message>
        <source>given up</source>
        <translation>aufgegeben</translation>
    </message>
    <message>
        <source>gives no samples to {0} now</source>
        <translation>gibt auf {0} jetzt keine Werte</translation>
    </message>
    <message>
        <source>goes on elsewhere</source>
        <translation>geht anderswo weiter</translation>
    </message>
    <message>
        <source>goes on from {0}: {1}</source>
        <translation>setzt {0} fort: {1}</translation>
    </message>
    <message>
        <source>goes on in {0}</source>
        <translation>geht in {0} weiter</translation>
    </message>
    <message>
        <source>goes on with no other recording, so there is nothing to join.</source>
        <translation>setzt keine andere Aufzeichnung fort, es gibt also nichts zusammenzusetzen.</translation>
    </message>
    <message>
        <source>good ones A</source>
        <translation>gute A</translation>
    </message>
    <message>
        <source>ground joint, behind the side trim of the footwell</source>
        <translation>Massepunkt, hinter der Seitenverkleidung im Fußraum</translation>
    </message>
    <message>
        <source>ground wire and joint</source>
        <translation>Masseleitung und Massepunkt</translation>
    </message>
    <message>
        <source>hardly any current flows</source>
        <translation>kaum Strom fließt</translation>
    </message>
    <message>
        <source>has a comma in a number.</source>
        <translation>hat ein Komma in einer Zahl.</translation>
    </message>
    <message>
        <source>has a sensor, scale or zero, but no channel plays this role.</source>
        <translation>hat Aufnehmer, Skalierung oder Nullpunkt, aber kein Kanal hat diese Aufgabe.</translation>
    </message>
    <message>
        <source>has gone; what has this name now is another program&apos;s.</source>
        <translation>ist weg; was jetzt diesen Namen hat, gehört einem anderen Programm.</translation>
    </message>
    <message>
        <source>has no edit to {0}.</source>
        <translation>hat keine solche Änderung ({0}).</translation>
    </message>
    <message>
        <source>has no table: {0}</source>
        <translation>hat keine Tabelle: {0}</translation>
    </message>
    <message>
        <source>has not the format {0}</source>
        <translation>hat nicht das Format {0}</translation>
    </message>
    <message>
        <source>have no faults, so whatever is read, nothing could be found</source>
        <translation>haben keine Fehler, was man auch misst, nichts wäre zu finden</translation>
    </message>
    <message>
        <source>have no motor</source>
        <translation>haben keinen Motor</translation>
    </message>
    <message>
        <source>have {0} motors</source>
        <translation>haben {0} Motoren</translation>
    </message>
    <message>
        <source>head</source>
        <translation>Bedienteil</translation>
    </message>
    <message>
        <source>high relay</source>
        <translation>Relais höchste Stufe</translation>
    </message>
    <message>
        <source>high relay 30</source>
        <translation>Relais höchste Stufe 30</translation>
    </message>
    <message>
        <source>high relay 85</source>
        <translation>Relais höchste Stufe 85</translation>
    </message>
    <message>
        <source>high relay 86</source>
        <translation>Relais höchste Stufe 86</translation>
    </message>
    <message>
        <source>high relay 87</source>
        <translation>Relais höchste Stufe 87</translation>
    </message>
    <message>
        <source>high relay and its socket</source>
        <translation>Relais höchste Stufe und sein Sockel</translation>
    </message>
    <message>
        <source>high relay coil</source>
        <translation>Spule des Relais höchste Stufe</translation>
    </message>
    <message>
        <source>high relay contact</source>
        <translation>Kontakt des Relais höchste Stufe</translation>
    </message>
    <message>
        <source>high relay socket 30</source>
        <translation>Sockel Relais höchste Stufe 30</translation>
    </message>
    <message>
        <source>high relay socket 85</source>
        <translation>Sockel Relais höchste Stufe 85</translation>
    </message>
    <message>
        <source>high relay socket 86</source>
        <translation>Sockel Relais höchste Stufe 86</translation>
    </message>
    <message>
        <source>high relay socket 87</source>
        <translation>Sockel Relais höchste Stufe 87</translation>
    </message>
    <message>
        <source>high relay&apos;s ground wire and joint</source>
        <translation>Masseleitung und Massepunkt des Relais höchste Stufe</translation>
    </message>
    <message>
        <source>high relay, beside the fan housing</source>
        <translation>Relais höchste Stufe, neben dem Gebläsegehäuse</translation>
    </message>
    <message>
        <source>higher and lower</source>
        <translation>höher und niedriger</translation>
    </message>
    <message>
        <source>holds a baseline that can&apos;t be: row {0}, {1}.</source>
        <translation>enthält eine Vergleichsbasis, die es nicht geben kann: Zeile {0}, {1}.</translation>
    </message>
    <message>
        <source>holds another kind of key than Ed25519.</source>
        <translation>enthält eine andere Art Schlüssel als Ed25519.</translation>
    </message>
    <message>
        <source>holds no circuit check.</source>
        <translation>enthält keine Stromlaufprüfung.</translation>
    </message>
    <message>
        <source>holds no recording: there is no {0}.</source>
        <translation>enthält keine Aufzeichnung: es gibt kein {0}.</translation>
    </message>
    <message>
        <source>holds no {0} baseline of {1}.</source>
        <translation>enthält keine Vergleichsbasis ({0}) von {1}.</translation>
    </message>
    <message>
        <source>how well the times of {0} agree is not known</source>
        <translation>wie gut die Zeiten von {0} übereinstimmen, ist nicht bekannt</translation>
    </message>
    <message>
        <source>ignition switch and its feed</source>
        <translation>Zündschalter und seine Zuleitung</translation>
    </message>
    <message>
        <source>illegal data address</source>
        <translation>unzulässige Adresse</translation>
    </message>
    <message>
        <source>illegal data value</source>
        <translation>unzulässiger Wert</translation>
    </message>
    <message>
        <source>illegal function</source>
        <translation>unzulässige Funktion</translation>
    </message>
    <message>
        <source>in the feed</source>
        <translation>im Plus</translation>
    </message>
    <message>
        <source>in the feed or the ground side</source>
        <translation>im Plus oder auf der Masseseite</translation>
    </message>
    <message>
        <source>in this state a circuit in order gives more as well</source>
        <translation>in diesem Zustand auch ein Stromkreis in Ordnung mehr ergibt</translation>
    </message>
    <message>
        <source>is a folder.</source>
        <translation>ist ein Ordner.</translation>
    </message>
    <message>
        <source>is a part of another recording.</source>
        <translation>ist ein Teil einer anderen Aufzeichnung.</translation>
    </message>
    <message>
        <source>is a port without messages.</source>
        <translation>ist ein Anschluss ohne Nachrichten.</translation>
    </message>
    <message>
        <source>is a recording; only packs are signed.</source>
        <translation>ist eine Aufzeichnung; nur Pakete sind unterschrieben.</translation>
    </message>
    <message>
        <source>is a sealed pack.</source>
        <translation>ist ein versiegeltes Paket.</translation>
    </message>
    <message>
        <source>is being changed by another program.</source>
        <translation>wird gerade von einem anderen Programm geändert.</translation>
    </message>
    <message>
        <source>is below emf_v</source>
        <translation>ist unter emf_v</translation>
    </message>
    <message>
        <source>is beyond anything that can be meant</source>
        <translation>liegt jenseits von allem, was gemeint sein kann</translation>
    </message>
    <message>
        <source>is closed.</source>
        <translation>ist geschlossen.</translation>
    </message>
    <message>
        <source>is damaged</source>
        <translation>ist beschädigt</translation>
    </message>
    <message>
        <source>is damaged in the PDF ({0})</source>
        <translation>ist im PDF beschädigt ({0})</translation>
    </message>
    <message>
        <source>is given twice.</source>
        <translation>ist zweimal angegeben.</translation>
    </message>
    <message>
        <source>is inverted twice.</source>
        <translation>ist zweimal umgepolt.</translation>
    </message>
    <message>
        <source>is kept by another program.</source>
        <translation>wird von einem anderen Programm offen gehalten.</translation>
    </message>
    <message>
        <source>is kept under a passphrase.</source>
        <translation>ist mit einem Kennwort gesichert.</translation>
    </message>
    <message>
        <source>is kept without a passphrase.</source>
        <translation>ist ohne Kennwort gesichert.</translation>
    </message>
    <message>
        <source>is larger than {0} MB</source>
        <translation>ist größer als {0} MB</translation>
    </message>
    <message>
        <source>is locked by a password</source>
        <translation>ist durch ein Passwort gesperrt</translation>
    </message>
    <message>
        <source>is longer than most systems can have</source>
        <translation>ist länger, als die meisten Systeme ihn haben können</translation>
    </message>
    <message>
        <source>is longer than {0} KiB.</source>
        <translation>ist länger als {0} KiB.</translation>
    </message>
    <message>
        <source>is missing</source>
        <translation>fehlt</translation>
    </message>
    <message>
        <source>is missing: every {0} needs {1}</source>
        <translation>fehlt: jedes {0} braucht {1}</translation>
    </message>
    <message>
        <source>is missing: {0} is a {1}</source>
        <translation>fehlt: {0} ist {1}</translation>
    </message>
    <message>
        <source>is missing: {0} needs both bounds</source>
        <translation>fehlt: {0} braucht beide Grenzen</translation>
    </message>
    <message>
        <source>is neither a recording nor a pack.</source>
        <translation>ist weder eine Aufzeichnung noch ein Paket.</translation>
    </message>
    <message>
        <source>is no Unicode text</source>
        <translation>ist kein Unicode-Text</translation>
    </message>
    <message>
        <source>is no accuracy.</source>
        <translation>ist keine Genauigkeit.</translation>
    </message>
    <message>
        <source>is no address of a USB device.</source>
        <translation>ist keine Adresse eines USB-Geräts.</translation>
    </message>
    <message>
        <source>is no address of a port.</source>
        <translation>ist keine Adresse eines Anschlusses.</translation>
    </message>
    <message>
        <source>is no answer to &apos;{0}&apos;.</source>
        <translation>ist keine Antwort auf &apos;{0}&apos;.</translation>
    </message>
    <message>
        <source>is no clamp&apos;s output.</source>
        <translation>ist kein Zangenausgang.</translation>
    </message>
    <message>
        <source>is no date.</source>
        <translation>ist kein Datum.</translation>
    </message>
    <message>
        <source>is no divider.</source>
        <translation>ist kein Teiler.</translation>
    </message>
    <message>
        <source>is no field of a job card.</source>
        <translation>ist kein Feld einer Auftragskarte.</translation>
    </message>
    <message>
        <source>is no figure of a {0}</source>
        <translation>ist kein Wert von {0}</translation>
    </message>
    <message>
        <source>is no folder, or is not there.</source>
        <translation>ist kein Ordner oder nicht da.</translation>
    </message>
    <message>
        <source>is no folder.</source>
        <translation>ist kein Ordner.</translation>
    </message>
    <message>
        <source>is no input resistance.</source>
        <translation>ist kein Eingangswiderstand.</translation>
    </message>
    <message>
        <source>is no instrument that messages can be sent to.</source>
        <translation>ist kein Instrument, dem man Nachrichten senden kann.</translation>
    </message>
    <message>
        <source>is no job card: it {0}.</source>
        <translation>ist keine Auftragskarte: {0}.</translation>
    </message>
    <message>
        <source>is no list of a job&apos;s recordings.</source>
        <translation>ist keine Liste der Aufzeichnungen eines Auftrags.</translation>
    </message>
    <message>
        <source>is no longer where it was made: its folder was moved away, or its disk was taken out.</source>
        <translation>ist nicht mehr, wo sie angelegt wurde: ihr Ordner wurde wegbewegt, oder ihr Laufwerk wurde entfernt.</translation>
    </message>
    <message>
        <source>is no meter that is typed by hand.</source>
        <translation>ist kein von Hand getipptes Messgerät.</translation>
    </message>
    <message>
        <source>is no name for a template.</source>
        <translation>ist kein Name für eine Vorlage.</translation>
    </message>
    <message>
        <source>is no number of turns.</source>
        <translation>ist keine Windungszahl.</translation>
    </message>
    <message>
        <source>is no number: {0}.</source>
        <translation>ist keine Zahl: {0}.</translation>
    </message>
    <message>
        <source>is no object</source>
        <translation>ist kein Objekt</translation>
    </message>
    <message>
        <source>is no place of this circuit.</source>
        <translation>ist kein Ort dieses Stromlaufs.</translation>
    </message>
    <message>
        <source>is no place or test point of this circuit.</source>
        <translation>ist kein Ort und kein Messpunkt dieses Stromlaufs.</translation>
    </message>
    <message>
        <source>is no regular expression: {0}.</source>
        <translation>ist kein regulärer Ausdruck: {0}.</translation>
    </message>
    <message>
        <source>is no shunt.</source>
        <translation>ist kein Shunt.</translation>
    </message>
    <message>
        <source>is no speed step</source>
        <translation>ist keine Stufe</translation>
    </message>
    <message>
        <source>is no speed step.</source>
        <translation>ist keine Stufe.</translation>
    </message>
    <message>
        <source>is no speed.</source>
        <translation>ist keine Stufe.</translation>
    </message>
    <message>
        <source>is no table of baselines.</source>
        <translation>ist keine Vergleichstabelle.</translation>
    </message>
    <message>
        <source>is no test point of this circuit.</source>
        <translation>ist kein Messpunkt dieses Stromlaufs.</translation>
    </message>
    <message>
        <source>is no time.</source>
        <translation>ist keine Zeit.</translation>
    </message>
    <message>
        <source>is no verdict.</source>
        <translation>ist kein Urteil.</translation>
    </message>
    <message>
        <source>is not UTF-8 text.</source>
        <translation>ist kein UTF-8-Text.</translation>
    </message>
    <message>
        <source>is not being read.</source>
        <translation>wird nicht gelesen.</translation>
    </message>
    <message>
        <source>is not below locked_current_a</source>
        <translation>ist nicht unter locked_current_a</translation>
    </message>
    <message>
        <source>is not changed by this edit: old and new are the same.</source>
        <translation>wird durch diese Änderung nicht anders: alt und neu sind gleich.</translation>
    </message>
    <message>
        <source>is not known here</source>
        <translation>ist hier nicht bekannt</translation>
    </message>
    <message>
        <source>is not plugged in</source>
        <translation>ist nicht angesteckt</translation>
    </message>
    <message>
        <source>is not possible.</source>
        <translation>ist nicht möglich.</translation>
    </message>
    <message>
        <source>is not there.</source>
        <translation>ist nicht da.</translation>
    </message>
    <message>
        <source>is not used by a {0}</source>
        <translation>wird von {0} nicht benutzt</translation>
    </message>
    <message>
        <source>is not valid JSON: {0}</source>
        <translation>ist kein gültiges JSON: {0}</translation>
    </message>
    <message>
        <source>is not valid JSON: {0}.</source>
        <translation>ist kein gültiges JSON: {0}.</translation>
    </message>
    <message>
        <source>is not valid TOML: {0}.</source>
        <translation>ist kein gültiges TOML: {0}.</translation>
    </message>
    <message>
        <source>is not what it was then</source>
        <translation>ist nicht, was es damals war</translation>
    </message>
    <message>
        <source>is not yours alone (mode {0}): whoever can read it can sign in your name.</source>
        <translation>ist nicht allein für den eigenen Benutzer (Rechte {0}): wer ihn lesen kann, kann in fremdem Namen unterschreiben.</translation>
    </message>
    <message>
        <source>is null</source>
        <translation>ist null</translation>
    </message>
    <message>
        <source>is of no figure of a {0}</source>
        <translation>gehört zu keinem Wert von {0}</translation>
    </message>
    <message>
        <source>is of no use to {0}</source>
        <translation>nützt {0} nichts</translation>
    </message>
    <message>
        <source>is on a {0}, which no plug can open</source>
        <translation>ist an {0}, was kein Stecker öffnen kann</translation>
    </message>
    <message>
        <source>is packed in a form not read here ({0})</source>
        <translation>ist in einer Form gepackt, die hier nicht gelesen wird ({0})</translation>
    </message>
    <message>
        <source>is refused: it carries too many files</source>
        <translation>wird abgelehnt: es trägt zu viele Dateien</translation>
    </message>
    <message>
        <source>is refused: it carries two files {0}</source>
        <translation>wird abgelehnt: es trägt zwei Dateien {0}</translation>
    </message>
    <message>
        <source>is refused: the files inside are too large</source>
        <translation>wird abgelehnt: die Dateien darin sind zu groß</translation>
    </message>
    <message>
        <source>is refused: {0}</source>
        <translation>wird abgelehnt: {0}</translation>
    </message>
    <message>
        <source>is refused: {0}.</source>
        <translation>wird abgelehnt: {0}.</translation>
    </message>
    <message>
        <source>is said to be behind a {0}, but also behind {1}.</source>
        <translation>ist hinter {0} angegeben, aber auch hinter {1}.</translation>
    </message>
    <message>
        <source>is sealed already.</source>
        <translation>ist schon versiegelt.</translation>
    </message>
    <message>
        <source>is simulated, and the recordings are not.</source>
        <translation>ist simuliert, und die Aufzeichnungen sind es nicht.</translation>
    </message>
    <message>
        <source>is the same recording as {0}.</source>
        <translation>ist dieselbe Aufzeichnung wie {0}.</translation>
    </message>
    <message>
        <source>is there already and is not empty.</source>
        <translation>ist schon da und nicht leer.</translation>
    </message>
    <message>
        <source>is there, but is no serial port.</source>
        <translation>ist da, ist aber kein serieller Anschluss.</translation>
    </message>
    <message>
        <source>is too large for a list of recordings.</source>
        <translation>ist zu groß für eine Liste von Aufzeichnungen.</translation>
    </message>
    <message>
        <source>is too long for {0}.</source>
        <translation>ist zu lang für {0}.</translation>
    </message>
    <message>
        <source>is torn off</source>
        <translation>ist abgerissen</translation>
    </message>
    <message>
        <source>is where node {0} is drawn: {1}, {2}</source>
        <translation>ist, wo der Knoten {0} gezeichnet ist: {1}, {2}</translation>
    </message>
    <message>
        <source>is withdrawn</source>
        <translation>ist zurückgenommen</translation>
    </message>
    <message>
        <source>is {0}</source>
        <translation>ist {0}</translation>
    </message>
    <message>
        <source>is {0}, at which no battery&apos;s second terminal lies</source>
        <translation>ist {0}, wo kein zweiter Anschluss einer Batterie liegt</translation>
    </message>
    <message>
        <source>is {0}, but a {1} does not fail so</source>
        <translation>ist {0}, aber {1} fällt so nicht aus</translation>
    </message>
    <message>
        <source>is {0}, but nominal_v is {1}</source>
        <translation>ist {0}, aber nominal_v ist {1}</translation>
    </message>
    <message>
        <source>is {0}, less than nought</source>
        <translation>ist {0}, kleiner als null</translation>
    </message>
    <message>
        <source>is {0}, not a list</source>
        <translation>ist {0}, keine Liste</translation>
    </message>
    <message>
        <source>is {0}, not a number</source>
        <translation>ist {0}, keine Zahl</translation>
    </message>
    <message>
        <source>is {0}, not a text</source>
        <translation>ist {0}, kein Text</translation>
    </message>
    <message>
        <source>is {0}, not a whole number</source>
        <translation>ist {0}, keine ganze Zahl</translation>
    </message>
    <message>
        <source>is {0}, not an instant with its UTC offset (RFC 3339)</source>
        <translation>ist {0}, kein Zeitpunkt mit Abstand zu UTC (RFC 3339)</translation>
    </message>
    <message>
        <source>is {0}, not below emf_v</source>
        <translation>ist {0}, nicht unter emf_v</translation>
    </message>
    <message>
        <source>is {0}, not below most {1}</source>
        <translation>ist {0}, nicht unter most {1}</translation>
    </message>
    <message>
        <source>is {0}, not below most_v {1}</source>
        <translation>ist {0}, nicht unter most_v {1}</translation>
    </message>
    <message>
        <source>is {0}, not one of {1}</source>
        <translation>ist {0}, keines von {1}</translation>
    </message>
    <message>
        <source>is {0}, not true or false</source>
        <translation>ist {0}, nicht true oder false</translation>
    </message>
    <message>
        <source>is {0}, not {1} to {2} seconds</source>
        <translation>ist {0}, nicht {1} bis {2} Sekunden</translation>
    </message>
    <message>
        <source>is {0}, of which there is no coil</source>
        <translation>ist {0}, wovon es keine Spule gibt</translation>
    </message>
    <message>
        <source>is {0}, of which there is no contact</source>
        <translation>ist {0}, wovon es keinen Kontakt gibt</translation>
    </message>
    <message>
        <source>is {0}, the name of a place in which the point is not</source>
        <translation>ist {0}, der Name eines Orts, an dem der Punkt nicht ist</translation>
    </message>
    <message>
        <source>is {0}, which has the coil {1} already</source>
        <translation>ist {0}, das schon die Spule {1} hat</translation>
    </message>
    <message>
        <source>is {0}.</source>
        <translation>ist {0}.</translation>
    </message>
    <message>
        <source>it broke off</source>
        <translation>es brach ab</translation>
    </message>
    <message>
        <source>it did not run steadily for long enough</source>
        <translation>sie lief nicht lange genug ruhig</translation>
    </message>
    <message>
        <source>it differs within rows {0}</source>
        <translation>weicht in den Zeilen {0} ab</translation>
    </message>
    <message>
        <source>it flickers</source>
        <translation>er flackert</translation>
    </message>
    <message>
        <source>it has edits on top</source>
        <translation>sie hat Änderungen darüber</translation>
    </message>
    <message>
        <source>it has more than {0} million pixels</source>
        <translation>es hat mehr als {0} Millionen Bildpunkte</translation>
    </message>
    <message>
        <source>it has two contents</source>
        <translation>es hat zwei Inhalte</translation>
    </message>
    <message>
        <source>it has two names</source>
        <translation>es hat zwei Namen</translation>
    </message>
    <message>
        <source>it holds a hole of more than 1 GiB</source>
        <translation>sie hat eine Lücke von mehr als 1 GiB</translation>
    </message>
    <message>
        <source>it holds more than {0} MiB unpacked</source>
        <translation>sie enthält entpackt mehr als {0} MiB</translation>
    </message>
    <message>
        <source>it holds {0} entries, {1} are the most</source>
        <translation>es enthält {0} Einträge, höchstens {1} sind erlaubt</translation>
    </message>
    <message>
        <source>it is a folder, not a file</source>
        <translation>es ist ein Ordner, keine Datei</translation>
    </message>
    <message>
        <source>it is a pipe or a device, not a file</source>
        <translation>es ist ein Rohr (Pipe) oder ein Gerät, keine Datei</translation>
    </message>
    <message>
        <source>it is being recorded</source>
        <translation>sie wird gerade aufgezeichnet</translation>
    </message>
    <message>
        <source>it is larger than {0} MB</source>
        <translation>es ist größer als {0} MB</translation>
    </message>
    <message>
        <source>it is longer than {0}</source>
        <translation>sie ist länger als {0}</translation>
    </message>
    <message>
        <source>it is no Parquet table</source>
        <translation>sie ist keine Parquet-Tabelle</translation>
    </message>
    <message>
        <source>it is no picture that can be read</source>
        <translation>es ist kein lesbares Bild</translation>
    </message>
    <message>
        <source>it is not there</source>
        <translation>es ist nicht da</translation>
    </message>
    <message>
        <source>it is not there now</source>
        <translation>es ist jetzt nicht da</translation>
    </message>
    <message>
        <source>it is not whole</source>
        <translation>sie ist nicht vollständig</translation>
    </message>
    <message>
        <source>it is shorter than what was written</source>
        <translation>sie ist kürzer, als geschrieben wurde</translation>
    </message>
    <message>
        <source>it is {0}</source>
        <translation>sie ist {0}</translation>
    </message>
    <message>
        <source>it needs {0} bytes, {1} are free where it is unpacked</source>
        <translation>es braucht {0} Bytes, {1} sind dort frei, wo es entpackt wird</translation>
    </message>
    <message>
        <source>it said nothing</source>
        <translation>es meldete nichts</translation>
    </message>
    <message>
        <source>it takes no reports</source>
        <translation>es nimmt keine Meldungen an</translation>
    </message>
    <message>
        <source>it talks at {0}, the profile says {1}: set the meter so, or put baud = {2} under [link] in a copy of the profile</source>
        <translation>es spricht mit {0}, das Profil sagt {1}: das Messgerät so einstellen, oder baud = {2} unter [link] in eine Kopie des Profils schreiben</translation>
    </message>
    <message>
        <source>it was never sealed: the window seals it on its Recordings page</source>
        <translation>sie wurde nie versiegelt: das Fenster versiegelt sie auf der Seite Archiv</translation>
    </message>
    <message>
        <source>it was not judged</source>
        <translation>sie wurde nicht beurteilt</translation>
    </message>
    <message>
        <source>it was not judged in order</source>
        <translation>sie wurde nicht als in Ordnung beurteilt</translation>
    </message>
    <message>
        <source>it went on after the command for {0}</source>
        <translation>es ging nach der Schaltung weiter, für {0}</translation>
    </message>
    <message>
        <source>it would unpack to {0} bytes, {1} are the most</source>
        <translation>entpackt hätte es {0} Bytes, höchstens {1} sind erlaubt</translation>
    </message>
    <message>
        <source>it would unpack to {0} times its size</source>
        <translation>entpackt wäre es {0}-mal so groß</translation>
    </message>
    <message>
        <source>its accuracy is stated up to {0} {1}</source>
        <translation>die Genauigkeit ist bis {0} {1} angegeben</translation>
    </message>
    <message>
        <source>its answer to {0} came later than answer_s = {1} s and was passed over: set more under [scpi] in the profile if it needs so long</source>
        <translation>seine Antwort auf {0} kam später als answer_s = {1} s und wurde übergangen: unter [scpi] im Profil mehr einstellen, wenn es so lange braucht</translation>
    </message>
    <message>
        <source>its clock runs {0}{1} ppm {2}, from {3} points{4}</source>
        <translation>seine Uhr geht {0}{1} ppm {2}, aus {3} Punkten{4}</translation>
    </message>
    <message>
        <source>its clock was set or restarted: {0} times</source>
        <translation>seine Uhr wurde gestellt oder neu gestartet: {0}-mal</translation>
    </message>
    <message>
        <source>its clock was set, restarted or stood still: tied anew</source>
        <translation>seine Uhr wurde gestellt, neu gestartet oder stand still: neu angebunden</translation>
    </message>
    <message>
        <source>its current was not read</source>
        <translation>ihr Strom wurde nicht gelesen</translation>
    </message>
    <message>
        <source>its current was not steady: several speeds are in it, or a contact</source>
        <translation>der Strom war nicht ruhig: mehrere Stufen sind darin, oder ein Kontakt</translation>
    </message>
    <message>
        <source>its figures can&apos;t be</source>
        <translation>seine Zahlen kann es nicht geben</translation>
    </message>
    <message>
        <source>its motor return was not read</source>
        <translation>ihre Motor-Rückleitung wurde nicht gelesen</translation>
    </message>
    <message>
        <source>its name has more than one line, and a card names one photo in each.</source>
        <translation>sein Name hat mehr als eine Zeile, und eine Karte nennt in jeder ein Foto.</translation>
    </message>
    <message>
        <source>its name is no text</source>
        <translation>der Name ist kein Text</translation>
    </message>
    <message>
        <source>its name is no text: give it another one</source>
        <translation>der Name ist kein Text: einen anderen geben</translation>
    </message>
    <message>
        <source>its name is no text: give it another one.</source>
        <translation>der Name ist kein Text: einen anderen geben.</translation>
    </message>
    <message>
        <source>its voltage was not steady (a pulsed feed, or a contact)</source>
        <translation>die Spannung war nicht ruhig (getaktete Versorgung oder ein Kontakt)</translation>
    </message>
    <message>
        <source>job card</source>
        <translation>Auftragskarte</translation>
    </message>
    <message>
        <source>join {0} to itself</source>
        <translation>verbinden {0} mit sich selbst</translation>
    </message>
    <message>
        <source>known: on top of it, where its seal does not reach: {0}. Review, compare, export and claim judge with that:</source>
        <translation>bekannt: darüber, wohin das Siegel nicht reicht: {0}. Beurteilung, Vergleich, Export und Antrag urteilen damit:</translation>
    </message>
    <message>
        <source>known: {0}</source>
        <translation>bekannt: {0}</translation>
    </message>
    <message>
        <source>last digit of {0}, {1} {2}</source>
        <translation>letzte Stelle von {0}, {1} {2}</translation>
    </message>
    <message>
        <source>lead from the battery to the fuse box</source>
        <translation>Kabel von der Batterie zum Sicherungskasten</translation>
    </message>
    <message>
        <source>leaves {0}{1}</source>
        <translation>lässt übrig: {0}{1}</translation>
    </message>
    <message>
        <source>less</source>
        <translation>weniger</translation>
    </message>
    <message>
        <source>less than 0.0001</source>
        <translation>unter 0,0001</translation>
    </message>
    <message>
        <source>less than a minute</source>
        <translation>unter einer Minute</translation>
    </message>
    <message>
        <source>lie on no loop with a battery: no current could flow</source>
        <translation>liegen in keinem Kreis mit einer Batterie: kein Strom könnte fließen</translation>
    </message>
    <message>
        <source>lies inside the recording {0}.</source>
        <translation>liegt in der Aufzeichnung {0}.</translation>
    </message>
    <message>
        <source>lies inside the sealed pack {0}.</source>
        <translation>liegt im versiegelten Paket {0}.</translation>
    </message>
    <message>
        <source>lies more than {0} folders deep</source>
        <translation>liegt mehr als {0} Ordner tief</translation>
    </message>
    <message>
        <source>lies outside the recording, which goes from 0 to {0} s.</source>
        <translation>liegt außerhalb der Aufzeichnung, die von 0 bis {0} s geht.</translation>
    </message>
    <message>
        <source>limits {0}</source>
        <translation>Grenzwerte {0}</translation>
    </message>
    <message>
        <source>line {0}</source>
        <translation>Zeile {0}</translation>
    </message>
    <message>
        <source>lines of {0} column{1}</source>
        <translation>Zeilen mit {0} Spalte(n)</translation>
    </message>
    <message>
        <source>lines {0} to {1}</source>
        <translation>Zeilen {0} bis {1}</translation>
    </message>
    <message>
        <source>listening at {0}</source>
        <translation>hört zu bei {0}</translation>
    </message>
    <message>
        <source>loose or rusted joint</source>
        <translation>loser oder verrosteter Massepunkt</translation>
    </message>
    <message>
        <source>loose or rusted joint, broken eyelet</source>
        <translation>loser oder verrosteter Massepunkt, gebrochene Öse</translation>
    </message>
    <message>
        <source>loose or wet pin</source>
        <translation>loser oder nasser Stift</translation>
    </message>
    <message>
        <source>lost: {0}</source>
        <translation>getrennt: {0}</translation>
    </message>
    <message>
        <source>low battery: its readings can&apos;t be trusted much longer</source>
        <translation>Batterie schwach: seinen Messwerten ist nicht mehr lange zu trauen</translation>
    </message>
    <message>
        <source>main fuse</source>
        <translation>Hauptsicherung</translation>
    </message>
    <message>
        <source>main fuse (20 A)</source>
        <translation>Hauptsicherung (20 A)</translation>
    </message>
    <message>
        <source>main fuse (30 A)</source>
        <translation>Hauptsicherung (30 A)</translation>
    </message>
    <message>
        <source>main fuse in its holder</source>
        <translation>Hauptsicherung in ihrem Halter</translation>
    </message>
    <message>
        <source>main fuse, battery side</source>
        <translation>Hauptsicherung, Batterieseite</translation>
    </message>
    <message>
        <source>main fuse, load side</source>
        <translation>Hauptsicherung, Lastseite</translation>
    </message>
    <message>
        <source>mean of good motors at speed {0}</source>
        <translation>Mittel guter Motoren auf Stufe {0}</translation>
    </message>
    <message>
        <source>mean of {0}</source>
        <translation>Mittel von {0}</translation>
    </message>
    <message>
        <source>mean of {0} good motors at speed {1}</source>
        <translation>Mittel von {0} guten Motoren auf Stufe {1}</translation>
    </message>
    <message>
        <source>mean of {0} readings</source>
        <translation>Mittel aus {0} Messwerten</translation>
    </message>
    <message>
        <source>means speed {0} a second time</source>
        <translation>meint Stufe {0} ein zweites Mal</translation>
    </message>
    <message>
        <source>measuring the good ones</source>
        <translation>Messung der guten</translation>
    </message>
    <message>
        <source>measuring, as if one error of all</source>
        <translation>Messung, als ein gemeinsamer Fehler aller</translation>
    </message>
    <message>
        <source>memory parity error</source>
        <translation>Speicherparitätsfehler</translation>
    </message>
    <message>
        <source>met {0}</source>
        <translation>angetroffen: {0}</translation>
    </message>
    <message>
        <source>missing: {0}</source>
        <translation>fehlend: {0}</translation>
    </message>
    <message>
        <source>module</source>
        <translation>Modul</translation>
    </message>
    <message>
        <source>module plug, command pin</source>
        <translation>Modulstecker, Stift Ansteuerung</translation>
    </message>
    <message>
        <source>module plug, command wire</source>
        <translation>Modulstecker, Leitung Ansteuerung</translation>
    </message>
    <message>
        <source>module plug, feed pin</source>
        <translation>Modulstecker, Plusstift</translation>
    </message>
    <message>
        <source>module plug, feed wire</source>
        <translation>Modulstecker, Plusleitung</translation>
    </message>
    <message>
        <source>module plug, ground pin</source>
        <translation>Modulstecker, Massestift</translation>
    </message>
    <message>
        <source>module plug, ground wire</source>
        <translation>Modulstecker, Masseleitung</translation>
    </message>
    <message>
        <source>module plug, in the fan housing</source>
        <translation>Modulstecker, im Gebläsegehäuse</translation>
    </message>
    <message>
        <source>module plug, motor return pin</source>
        <translation>Modulstecker, Stift Motor-Minus</translation>
    </message>
    <message>
        <source>module plug, motor return wire</source>
        <translation>Modulstecker, Leitung Motor-Minus</translation>
    </message>
    <message>
        <source>module plug, output pin</source>
        <translation>Modulstecker, Ausgangsstift</translation>
    </message>
    <message>
        <source>module plug, output wire</source>
        <translation>Modulstecker, Ausgangsleitung</translation>
    </message>
    <message>
        <source>module&apos;s ground wire and joint</source>
        <translation>Masseleitung und Massepunkt des Moduls</translation>
    </message>
    <message>
        <source>module&apos;s output stage</source>
        <translation>Endstufe des Moduls</translation>
    </message>
    <message>
        <source>module&apos;s own consumption</source>
        <translation>Eigenverbrauch des Moduls</translation>
    </message>
    <message>
        <source>module&apos;s pull-down</source>
        <translation>Pull-down des Moduls</translation>
    </message>
    <message>
        <source>module, command pin</source>
        <translation>Modul, Stift Ansteuerung</translation>
    </message>
    <message>
        <source>module, feed pin</source>
        <translation>Modul, Plusstift</translation>
    </message>
    <message>
        <source>module, ground pin</source>
        <translation>Modul, Massestift</translation>
    </message>
    <message>
        <source>module, output pin</source>
        <translation>Modul, Ausgangsstift</translation>
    </message>
    <message>
        <source>more</source>
        <translation>mehr</translation>
    </message>
    <message>
        <source>more current than the meter or the clamp is stated for</source>
        <translation>mehr Strom, als für Messgerät oder Zange angegeben ist</translation>
    </message>
    <message>
        <source>more than one meter has a channel of this name.</source>
        <translation>mehr als ein Messgerät hat einen Kanal dieses Namens.</translation>
    </message>
    <message>
        <source>more than one meter is typed by hand.</source>
        <translation>mehr als ein Messgerät wird von Hand getippt.</translation>
    </message>
    <message>
        <source>more than one {0} there: {1}.</source>
        <translation>dort mehr als ein {0}: {1}.</translation>
    </message>
    <message>
        <source>more volts than a meter is stated for</source>
        <translation>mehr Spannung, als für ein Messgerät angegeben ist</translation>
    </message>
    <message>
        <source>motor current at speed {0}</source>
        <translation>Motorstrom auf Stufe {0}</translation>
    </message>
    <message>
        <source>motor current at speed {0} and {1} V</source>
        <translation>Motorstrom auf Stufe {0} bei {1} V</translation>
    </message>
    <message>
        <source>motor current at {0} V</source>
        <translation>Motorstrom bei {0} V</translation>
    </message>
    <message>
        <source>motor current too high, clogged filter, water</source>
        <translation>Motorstrom zu hoch, Filter verstopft, Wasser</translation>
    </message>
    <message>
        <source>motor current too high, loose or wet pin</source>
        <translation>Motorstrom zu hoch, loser oder nasser Stift</translation>
    </message>
    <message>
        <source>motor current too high, wrong type of relay</source>
        <translation>Motorstrom zu hoch, falsche Relaisbauart</translation>
    </message>
    <message>
        <source>motor dragging, no air over the pack, water</source>
        <translation>Motor schwergängig, keine Luft über den Vorwiderständen, Wasser</translation>
    </message>
    <message>
        <source>motor dragging, no air over the pack; it does not close again</source>
        <translation>Motor schwergängig, keine Luft über den Vorwiderständen; er schließt nicht wieder</translation>
    </message>
    <message>
        <source>motor feed voltage</source>
        <translation>Spannung am Plus des Motors</translation>
    </message>
    <message>
        <source>motor ground</source>
        <translation>Motormasse</translation>
    </message>
    <message>
        <source>motor jammed or its current too high, water</source>
        <translation>Motor blockiert oder sein Strom zu hoch, Wasser</translation>
    </message>
    <message>
        <source>motor or its supply</source>
        <translation>Motor oder seine Versorgung</translation>
    </message>
    <message>
        <source>motor plug</source>
        <translation>Motorstecker</translation>
    </message>
    <message>
        <source>motor plug, behind the glove box</source>
        <translation>Motorstecker, hinter dem Handschuhfach</translation>
    </message>
    <message>
        <source>motor plug, feed pin</source>
        <translation>Motorstecker, Plusstift</translation>
    </message>
    <message>
        <source>motor plug, feed wire</source>
        <translation>Motorstecker, Plusleitung</translation>
    </message>
    <message>
        <source>motor plug, return pin</source>
        <translation>Motorstecker, Minusstift</translation>
    </message>
    <message>
        <source>motor plug, return wire</source>
        <translation>Motorstecker, Minusleitung</translation>
    </message>
    <message>
        <source>motor return to battery negative, its ground wire included</source>
        <translation>Minus des Motors bis Minuspol der Batterie, mit der Masseleitung</translation>
    </message>
    <message>
        <source>motor return to controller ground</source>
        <translation>Minus des Motors bis Masse des Reglers</translation>
    </message>
    <message>
        <source>motor return voltage</source>
        <translation>Spannung am Minus des Motors</translation>
    </message>
    <message>
        <source>motor voltage as read</source>
        <translation>Motorspannung wie abgelesen</translation>
    </message>
    <message>
        <source>motor voltage at speed {0}</source>
        <translation>Motorspannung auf Stufe {0}</translation>
    </message>
    <message>
        <source>motor&apos;s ground wire and joint</source>
        <translation>Masseleitung und Massepunkt des Motors</translation>
    </message>
    <message>
        <source>motor, feed terminal</source>
        <translation>Motor, Plusanschluss</translation>
    </message>
    <message>
        <source>motor, return terminal</source>
        <translation>Motor, Minusanschluss</translation>
    </message>
    <message>
        <source>move of the {0}</source>
        <translation>Bewegung: {0}</translation>
    </message>
    <message>
        <source>moved at {0} s, before the first tap, and nothing happened.</source>
        <translation>bei {0} s bewegt, vor dem ersten Klopfen, und nichts geschah.</translation>
    </message>
    <message>
        <source>moved by hand, and nothing happened: {0}.</source>
        <translation>von Hand bewegt, und nichts geschah: {0}.</translation>
    </message>
    <message>
        <source>name {0} twice</source>
        <translation>nennen {0} zweimal</translation>
    </message>
    <message>
        <source>names speed {0}, which can&apos;t be chosen</source>
        <translation>nennt Stufe {0}, die nicht wählbar ist</translation>
    </message>
    <message>
        <source>names {0} {1}, which is none of that element&apos;s faults</source>
        <translation>nennt {0} {1}, was keiner der Fehler dieses Elements ist</translation>
    </message>
    <message>
        <source>names {0}, from which no element leads to the battery</source>
        <translation>nennt {0}, von dem kein Element zur Batterie führt</translation>
    </message>
    <message>
        <source>names {0}, where no test point is</source>
        <translation>nennt {0}, wo kein Messpunkt ist</translation>
    </message>
    <message>
        <source>names {0}, which hangs on nothing</source>
        <translation>nennt {0}, das an nichts hängt</translation>
    </message>
    <message>
        <source>names {0}, which has more than two terminals</source>
        <translation>nennt {0}, das mehr als zwei Anschlüsse hat</translation>
    </message>
    <message>
        <source>names {0}, which has no element</source>
        <translation>nennt {0}, die kein Element hat</translation>
    </message>
    <message>
        <source>names {0}, which is no {1} of this circuit</source>
        <translation>nennt {0}, das kein {1} dieses Stromlaufs ist</translation>
    </message>
    <message>
        <source>near 0 {0}</source>
        <translation>fast 0 {0}</translation>
    </message>
    <message>
        <source>neither its relay output nor its battery voltage was read</source>
        <translation>weder ihr Relaisausgang noch ihre Batteriespannung wurde gelesen</translation>
    </message>
    <message>
        <source>new - mean A</source>
        <translation>neu - Mittel A</translation>
    </message>
    <message>
        <source>new - old A</source>
        <translation>neu - alt A</translation>
    </message>
    <message>
        <source>new / old</source>
        <translation>neu / alt</translation>
    </message>
    <message>
        <source>new: {0}</source>
        <translation>neu: {0}</translation>
    </message>
    <message>
        <source>next to no current</source>
        <translation>fast kein Strom</translation>
    </message>
    <message>
        <source>next to no voltage across the motor</source>
        <translation>fast keine Spannung am Motor</translation>
    </message>
    <message>
        <source>no answer from {0} within {1} s.</source>
        <translation>keine Antwort von {0} innerhalb von {1} s.</translation>
    </message>
    <message>
        <source>no answer from {0}.</source>
        <translation>keine Antwort von {0}.</translation>
    </message>
    <message>
        <source>no answer to {0} within {1} s</source>
        <translation>keine Antwort auf {0} innerhalb von {1} s</translation>
    </message>
    <message>
        <source>no baseline</source>
        <translation>keine Vergleichsbasis</translation>
    </message>
    <message>
        <source>no channel plays this role, so it has no zero.</source>
        <translation>kein Kanal hat diese Aufgabe, also gibt es keinen Nullpunkt.</translation>
    </message>
    <message>
        <source>no channel read the motor current; there is nothing to compare.</source>
        <translation>kein Kanal las den Motorstrom; es gibt nichts zu vergleichen.</translation>
    </message>
    <message>
        <source>no circuit was chosen.</source>
        <translation>kein Stromlauf ist gewählt.</translation>
    </message>
    <message>
        <source>no file</source>
        <translation>keine Datei</translation>
    </message>
    <message>
        <source>no key</source>
        <translation>kein Schlüssel</translation>
    </message>
    <message>
        <source>no kind of port is called {0}.</source>
        <translation>keine Art von Anschluss heißt {0}.</translation>
    </message>
    <message>
        <source>no machine of this name is known.</source>
        <translation>kein Rechner dieses Namens ist bekannt.</translation>
    </message>
    <message>
        <source>no meter of this recording is typed by hand.</source>
        <translation>kein Messgerät dieser Aufzeichnung wird von Hand getippt.</translation>
    </message>
    <message>
        <source>no motor voltage</source>
        <translation>keine Motorspannung</translation>
    </message>
    <message>
        <source>no number was typed.</source>
        <translation>keine Zahl wurde getippt.</translation>
    </message>
    <message>
        <source>no opening times are known of fuses of the kind {0}</source>
        <translation>von Sicherungen der Art {0} sind keine Auslösezeiten bekannt</translation>
    </message>
    <message>
        <source>no opening times are known of {0} fuses of {1} A</source>
        <translation>von {0}-Sicherungen mit {1} A sind keine Auslösezeiten bekannt</translation>
    </message>
    <message>
        <source>no picture: Qt can&apos;t be loaded ({0})</source>
        <translation>kein Bild: Qt lässt sich nicht laden ({0})</translation>
    </message>
    <message>
        <source>no profile is for this kind of port. The Meters page lists the kinds of meter.</source>
        <translation>kein Profil passt zu dieser Art von Anschluss. Die Seite Messgeräte zeigt die Arten von Messgeräten.</translation>
    </message>
    <message>
        <source>no profile is for this kind of port. `meterlog ports` lists the profiles.</source>
        <translation>kein Profil passt zu dieser Art von Anschluss. `meterlog ports` nennt die Profile.</translation>
    </message>
    <message>
        <source>no profile of this name among the {0}.</source>
        <translation>kein Profil dieses Namens unter den {0}.</translation>
    </message>
    <message>
        <source>no reading has come in yet</source>
        <translation>noch kein Messwert da</translation>
    </message>
    <message>
        <source>no reason given</source>
        <translation>kein Grund genannt</translation>
    </message>
    <message>
        <source>no size</source>
        <translation>keine Größe</translation>
    </message>
    <message>
        <source>no speed change was found in the current</source>
        <translation>kein Stufenwechsel war im Strom zu finden</translation>
    </message>
    <message>
        <source>no speed was commanded</source>
        <translation>keine Stufe war geschaltet</translation>
    </message>
    <message>
        <source>no steady current</source>
        <translation>kein ruhiger Strom</translation>
    </message>
    <message>
        <source>no such channel.</source>
        <translation>diesen Kanal gibt es nicht.</translation>
    </message>
    <message>
        <source>no such device is plugged in.</source>
        <translation>kein solches Gerät ist angesteckt.</translation>
    </message>
    <message>
        <source>no such file.</source>
        <translation>diese Datei gibt es nicht.</translation>
    </message>
    <message>
        <source>no such instrument is plugged in.</source>
        <translation>kein solches Instrument ist angesteckt.</translation>
    </message>
    <message>
        <source>no time</source>
        <translation>keine Zeit</translation>
    </message>
    <message>
        <source>no trace: no meter was recorded</source>
        <translation>keine Kurve: kein Messgerät wurde aufgezeichnet</translation>
    </message>
    <message>
        <source>no value</source>
        <translation>kein Wert</translation>
    </message>
    <message>
        <source>no zero is kept for this meter, channel and sensor.</source>
        <translation>für Messgerät, Kanal und Aufnehmer ist kein Nullpunkt aufbewahrt.</translation>
    </message>
    <message>
        <source>no zero of {0} was taken</source>
        <translation>kein Nullpunkt genommen ({0})</translation>
    </message>
    <message>
        <source>no {0} at {1} s was withdrawn.</source>
        <translation>kein {0} bei {1} s wurde zurückgenommen.</translation>
    </message>
    <message>
        <source>no {0} there.</source>
        <translation>dort kein {0}.</translation>
    </message>
    <message>
        <source>no-load current</source>
        <translation>Leerlaufstrom</translation>
    </message>
    <message>
        <source>nobody listens there.</source>
        <translation>dort nimmt niemand an.</translation>
    </message>
    <message>
        <source>nobody marked it: before the first tap move the probe leads alone, and mark it (w).</source>
        <translation>niemand hat es markiert: vor dem ersten Klopfen nur die Messleitungen bewegen und es markieren (w).</translation>
    </message>
    <message>
        <source>nobody said that the fan runs, and its current was not read</source>
        <translation>niemand angab, dass das Gebläse läuft, und sein Strom nicht gemessen wurde</translation>
    </message>
    <message>
        <source>none of them is missing</source>
        <translation>keiner davon fehlt</translation>
    </message>
    <message>
        <source>none was taken {0} the taps: clamp empty and shut, press z.</source>
        <translation>keiner wurde genommen {0} dem Klopfen: Zange leer und geschlossen, z drücken.</translation>
    </message>
    <message>
        <source>normal distribution, {0} %</source>
        <translation>Normalverteilung, {0} %</translation>
    </message>
    <message>
        <source>not as it was sealed: check it with meterlog verify.</source>
        <translation>nicht wie versiegelt: mit meterlog verify prüfen.</translation>
    </message>
    <message>
        <source>not asked for a reading: {0}</source>
        <translation>nicht nach einem Messwert gefragt: {0}</translation>
    </message>
    <message>
        <source>not commanded</source>
        <translation>nicht geschaltet</translation>
    </message>
    <message>
        <source>not comparable</source>
        <translation>nicht vergleichbar</translation>
    </message>
    <message>
        <source>not counted</source>
        <translation>nicht mitgezählt</translation>
    </message>
    <message>
        <source>not everything could be kept: {0}</source>
        <translation>nicht alles konnte aufbewahrt werden: {0}</translation>
    </message>
    <message>
        <source>not in the standard</source>
        <translation>nicht in der Norm</translation>
    </message>
    <message>
        <source>not kept: {0}</source>
        <translation>nicht aufbewahrt: {0}</translation>
    </message>
    <message>
        <source>not open:</source>
        <translation>nicht offen:</translation>
    </message>
    <message>
        <source>not stated on either side: {0}</source>
        <translation>auf keiner Seite angegeben: {0}</translation>
    </message>
    <message>
        <source>note: {0}</source>
        <translation>Hinweis: {0}</translation>
    </message>
    <message>
        <source>nothing can be sent to this device.</source>
        <translation>an dieses Gerät lässt sich nichts senden.</translation>
    </message>
    <message>
        <source>nothing is asked of the fan</source>
        <translation>vom Gebläse nichts verlangt wird</translation>
    </message>
    <message>
        <source>nothing is being recorded.</source>
        <translation>nichts wird aufgezeichnet.</translation>
    </message>
    <message>
        <source>nothing read</source>
        <translation>nichts gemessen</translation>
    </message>
    <message>
        <source>nothing was heard{0}, and nothing answered. Check that the meter is on and set to send (many have a key for it), its cable, and that its line speed is one of a profile.</source>
        <translation>nichts war zu hören{0}, und nichts antwortete. Prüfen, ob das Messgerät an ist und sendet (viele haben eine Taste dafür), sein Kabel, und ob seine Übertragungsrate die eines Profils ist.</translation>
    </message>
    <message>
        <source>nothing was read for {0} s when they were moved at {1} s: move them again while the meters read.</source>
        <translation>{0} s lang wurde nichts gelesen, als sie bei {1} s bewegt wurden: noch einmal bewegen, während die Messgeräte lesen.</translation>
    </message>
    <message>
        <source>of the kind</source>
        <translation>der Bauart</translation>
    </message>
    <message>
        <source>of this motor</source>
        <translation>dieses Motors</translation>
    </message>
    <message>
        <source>ohms too many</source>
        <translation>Ohm zu viel</translation>
    </message>
    <message>
        <source>old {0}, new {1}</source>
        <translation>alt {0}, neu {1}</translation>
    </message>
    <message>
        <source>old: {0}</source>
        <translation>alt: {0}</translation>
    </message>
    <message>
        <source>on the ground side</source>
        <translation>auf der Masseseite</translation>
    </message>
    <message>
        <source>once</source>
        <translation>einmal</translation>
    </message>
    <message>
        <source>one reading</source>
        <translation>ein Messwert</translation>
    </message>
    <message>
        <source>one rectangular source dominates (EA-4/02, S9){0}{1}</source>
        <translation>eine Rechteckquelle überwiegt (EA-4/02, S9){0}{1}</translation>
    </message>
    <message>
        <source>one {0} bar (bar {1}, counted from the deepest notch)</source>
        <translation>einer Lamelle, {0} (Lamelle {1}, gezählt ab der tiefsten Kerbe)</translation>
    </message>
    <message>
        <source>only the motor&apos;s feed was read, and it does not follow the speed: with a controller in the return that is not the voltage across the motor; read the motor&apos;s return as well</source>
        <translation>nur das Plus des Motors wurde gemessen, und es folgt der Stufe nicht: mit einem Regler im Minus ist das nicht die Spannung am Motor; auch das Minus des Motors messen</translation>
    </message>
    <message>
        <source>open, or not switched on</source>
        <translation>offen oder nicht eingeschaltet</translation>
    </message>
    <message>
        <source>or</source>
        <translation>oder</translation>
    </message>
    <message>
        <source>others are missing</source>
        <translation>andere fehlen</translation>
    </message>
    <message>
        <source>over the controller</source>
        <translation>über dem Regler</translation>
    </message>
    <message>
        <source>own error</source>
        <translation>Eigenfehler</translation>
    </message>
    <message>
        <source>own error and zero</source>
        <translation>Eigenfehler und Nullpunkt</translation>
    </message>
    <message>
        <source>pack</source>
        <translation>Vorwiderstände</translation>
    </message>
    <message>
        <source>pack&apos;s resistor 1</source>
        <translation>Vorwiderstand 1</translation>
    </message>
    <message>
        <source>pack&apos;s resistor 2</source>
        <translation>Vorwiderstand 2</translation>
    </message>
    <message>
        <source>pack&apos;s resistor 3</source>
        <translation>Vorwiderstand 3</translation>
    </message>
    <message>
        <source>pack&apos;s thermal limiter</source>
        <translation>Temperatursicherung der Vorwiderstände</translation>
    </message>
    <message>
        <source>pack: {0}</source>
        <translation>Paket: {0}</translation>
    </message>
    <message>
        <source>page {0}</source>
        <translation>Seite {0}</translation>
    </message>
    <message>
        <source>peak over steady</source>
        <translation>Spitze zu Dauerstrom</translation>
    </message>
    <message>
        <source>photo {0}: can&apos;t be put in: {1}.</source>
        <translation>Foto {0}: kann nicht hinein: {1}.</translation>
    </message>
    <message>
        <source>photos: {0} in a pack without customer data, and nothing in them is made unreadable: look whether one shows a plate, a VIN, a name or a face.</source>
        <translation>Fotos: {0} in einem Paket ohne Kundendaten, und nichts darin ist unkenntlich gemacht: nachsehen, ob eines ein Kennzeichen, eine FIN, einen Namen oder ein Gesicht zeigt.</translation>
    </message>
    <message>
        <source>process {0}</source>
        <translation>Prozess {0}</translation>
    </message>
    <message>
        <source>pulsed module with its plug</source>
        <translation>getaktetes Modul mit seinem Stecker</translation>
    </message>
    <message>
        <source>put in</source>
        <translation>eingefügt</translation>
    </message>
    <message>
        <source>put together of {0} parts: {1}</source>
        <translation>aus {0} Teilen zusammengesetzt: {1}</translation>
    </message>
    <message>
        <source>range {0} {1}, steps of {2} {3}</source>
        <translation>Bereich {0} {1}, Schritte von {2} {3}</translation>
    </message>
    <message>
        <source>ratio to the good ones at speed {0}</source>
        <translation>Verhältnis zu den guten auf Stufe {0}</translation>
    </message>
    <message>
        <source>ratio {0}</source>
        <translation>Verhältnis {0}</translation>
    </message>
    <message>
        <source>read by a shunt, which has no zero that drifts as a clamp&apos;s does.</source>
        <translation>mit einem Shunt gemessen, dessen Nullpunkt nicht wie der einer Zange driftet.</translation>
    </message>
    <message>
        <source>reader {0}</source>
        <translation>Leser {0}</translation>
    </message>
    <message>
        <source>reading Modbus registers{0}</source>
        <translation>liest Modbus-Register{0}</translation>
    </message>
    <message>
        <source>reading and judging recordings</source>
        <translation>liest und beurteilt Aufzeichnungen</translation>
    </message>
    <message>
        <source>reading stopped: {0}</source>
        <translation>Lesen beendet: {0}</translation>
    </message>
    <message>
        <source>reading stopped: {0}: {1}</source>
        <translation>Lesen beendet: {0}: {1}</translation>
    </message>
    <message>
        <source>reading {0}</source>
        <translation>Messung {0}</translation>
    </message>
    <message>
        <source>readings are missing just now: hold the probe still</source>
        <translation>gerade fehlen Messwerte: die Messspitze ruhig halten</translation>
    </message>
    <message>
        <source>readings of which the zero was made</source>
        <translation>Messwerte, aus denen der Nullpunkt gebildet wurde</translation>
    </message>
    <message>
        <source>readings {0}</source>
        <translation>Messwerte {0}</translation>
    </message>
    <message>
        <source>readings {0} {1}</source>
        <translation>Messwerte {0} {1}</translation>
    </message>
    <message>
        <source>redo of the edit of</source>
        <translation>Änderung wiederhergestellt vom</translation>
    </message>
    <message>
        <source>redo of the edit of {0} ({1})</source>
        <translation>Änderung vom {0} wiederholt ({1})</translation>
    </message>
    <message>
        <source>register {0}</source>
        <translation>Register {0}</translation>
    </message>
    <message>
        <source>registers {0} to {1}</source>
        <translation>Register {0} bis {1}</translation>
    </message>
    <message>
        <source>relay 30</source>
        <translation>Relais 30</translation>
    </message>
    <message>
        <source>relay 85</source>
        <translation>Relais 85</translation>
    </message>
    <message>
        <source>relay 86</source>
        <translation>Relais 86</translation>
    </message>
    <message>
        <source>relay 87</source>
        <translation>Relais 87</translation>
    </message>
    <message>
        <source>relay and its socket</source>
        <translation>Relais und sein Sockel</translation>
    </message>
    <message>
        <source>relay coil&apos;s feed wire and ground</source>
        <translation>Zuleitung und Masse der Relaisspule</translation>
    </message>
    <message>
        <source>relay coil&apos;s ground</source>
        <translation>Masse der Relaisspule</translation>
    </message>
    <message>
        <source>relay contact</source>
        <translation>Relaiskontakt</translation>
    </message>
    <message>
        <source>relay socket 30</source>
        <translation>Relaissockel 30</translation>
    </message>
    <message>
        <source>relay socket 85</source>
        <translation>Relaissockel 85</translation>
    </message>
    <message>
        <source>relay socket 86</source>
        <translation>Relaissockel 86</translation>
    </message>
    <message>
        <source>relay socket 87</source>
        <translation>Relaissockel 87</translation>
    </message>
    <message>
        <source>reopening {0}</source>
        <translation>öffnet {0} neu</translation>
    </message>
    <message>
        <source>repair the switch or its feed</source>
        <translation>den Schalter oder seine Zuleitung instand setzen</translation>
    </message>
    <message>
        <source>repair the wire</source>
        <translation>die Leitung instand setzen</translation>
    </message>
    <message>
        <source>repair the wire, clean and tighten the joint</source>
        <translation>die Leitung instand setzen, den Massepunkt reinigen und festziehen</translation>
    </message>
    <message>
        <source>repeat a pair</source>
        <translation>wiederholen ein Paar</translation>
    </message>
    <message>
        <source>repeats the name {0}</source>
        <translation>wiederholt den Namen {0}</translation>
    </message>
    <message>
        <source>repeats {0}</source>
        <translation>wiederholt {0}</translation>
    </message>
    <message>
        <source>replace pins and housing</source>
        <translation>Stifte und Gehäuse ersetzen</translation>
    </message>
    <message>
        <source>replace the control head, after all else was ruled out</source>
        <translation>das Bedienteil ersetzen, nachdem alles andere ausgeschlossen ist</translation>
    </message>
    <message>
        <source>replace the controller, and the plug if its pins are hot or loose, after the motor&apos;s current was checked</source>
        <translation>den Regler ersetzen, und den Stecker, wenn seine Stifte heiß oder lose sind, nachdem der Motorstrom geprüft ist</translation>
    </message>
    <message>
        <source>replace the module, and the plug if its pins are hot or loose, after the motor&apos;s current was checked</source>
        <translation>das Modul ersetzen, und den Stecker, wenn seine Stifte heiß oder lose sind, nachdem der Motorstrom geprüft ist</translation>
    </message>
    <message>
        <source>replace the motor, then check its current at every speed</source>
        <translation>den Motor ersetzen, dann seinen Strom auf jeder Stufe prüfen</translation>
    </message>
    <message>
        <source>replace the pack, and the plug if its pins are hot or loose, after the motor&apos;s current was checked</source>
        <translation>die Vorwiderstände ersetzen, und den Stecker, wenn seine Stifte heiß oder lose sind, nachdem der Motorstrom geprüft ist</translation>
    </message>
    <message>
        <source>replace the relay; a burnt socket as well</source>
        <translation>das Relais ersetzen; einen verbrannten Sockel auch</translation>
    </message>
    <message>
        <source>replace the switch, and the plug if its pins are hot or loose</source>
        <translation>den Schalter ersetzen, und den Stecker, wenn seine Stifte heiß oder lose sind</translation>
    </message>
    <message>
        <source>reports that its battery is low: a low battery bends readings long before the meter goes out. Put in a new one and measure again.</source>
        <translation>meldet, dass seine Batterie schwach ist: eine schwache Batterie verfälscht Messwerte, lange bevor das Gerät ausgeht. Eine neue einsetzen und noch einmal messen.</translation>
    </message>
    <message>
        <source>reports {0}</source>
        <translation>meldet {0}</translation>
    </message>
    <message>
        <source>residuals of the fit beyond what the points&apos; own errors explain</source>
        <translation>Reste der Anpassung über die Fehler der Punkte hinaus</translation>
    </message>
    <message>
        <source>resistance between battery and motor</source>
        <translation>Widerstand zwischen Batterie und Motor</translation>
    </message>
    <message>
        <source>resistance between relay and motor (plug or wire)</source>
        <translation>Widerstand zwischen Relais und Motor (Stecker oder Leitung)</translation>
    </message>
    <message>
        <source>resistance in fuse, relay or their wires</source>
        <translation>Widerstand in Sicherung, Relais oder ihren Leitungen</translation>
    </message>
    <message>
        <source>resistor pack plug, common pin</source>
        <translation>Stecker der Vorwiderstände, gemeinsamer Stift</translation>
    </message>
    <message>
        <source>resistor pack plug, common wire</source>
        <translation>Stecker der Vorwiderstände, gemeinsame Leitung</translation>
    </message>
    <message>
        <source>resistor pack plug, in the fan housing</source>
        <translation>Stecker der Vorwiderstände, im Gebläsegehäuse</translation>
    </message>
    <message>
        <source>resistor pack plug, tap 1</source>
        <translation>Stecker der Vorwiderstände, Abgriff 1</translation>
    </message>
    <message>
        <source>resistor pack plug, tap 2</source>
        <translation>Stecker der Vorwiderstände, Abgriff 2</translation>
    </message>
    <message>
        <source>resistor pack plug, tap 3</source>
        <translation>Stecker der Vorwiderstände, Abgriff 3</translation>
    </message>
    <message>
        <source>resistor pack with its plug</source>
        <translation>Vorwiderstände mit ihrem Stecker</translation>
    </message>
    <message>
        <source>resistor pack, after the limiter</source>
        <translation>Vorwiderstände, hinter der Temperatursicherung</translation>
    </message>
    <message>
        <source>resistor pack, before the limiter</source>
        <translation>Vorwiderstände, vor der Temperatursicherung</translation>
    </message>
    <message>
        <source>resistor pack, common pin</source>
        <translation>Vorwiderstände, gemeinsamer Stift</translation>
    </message>
    <message>
        <source>return rose</source>
        <translation>das Minus stieg</translation>
    </message>
    <message>
        <source>rose</source>
        <translation>stieg</translation>
    </message>
    <message>
        <source>row {0} differs</source>
        <translation>Zeile {0} weicht ab</translation>
    </message>
    <message>
        <source>rows {0} differ</source>
        <translation>Zeilen {0} weichen ab</translation>
    </message>
    <message>
        <source>rust or paint under the eyelet</source>
        <translation>Rost oder Lack unter der Öse</translation>
    </message>
    <message>
        <source>rust or paint under the eyelet, broken strands</source>
        <translation>Rost oder Lack unter der Öse, gebrochene Adern</translation>
    </message>
    <message>
        <source>rust under the eyelet</source>
        <translation>Rost unter der Öse</translation>
    </message>
    <message>
        <source>same rating and type, once its cause is found</source>
        <translation>gleicher Nennwert und gleiche Art, sobald die Ursache gefunden ist</translation>
    </message>
    <message>
        <source>says nothing of speed {0}</source>
        <translation>sagt nichts über Stufe {0}</translation>
    </message>
    <message>
        <source>says of itself that its {0} is {1}, not {2}.</source>
        <translation>sagt von sich selbst, {0} sei {1}, nicht {2}.</translation>
    </message>
    <message>
        <source>says that the sensor goes no further than its own error.</source>
        <translation>heißt, dass der Aufnehmer nicht weiter reicht als sein eigener Fehler.</translation>
    </message>
    <message>
        <source>scatter about the curve</source>
        <translation>Streuung um die Kurve</translation>
    </message>
    <message>
        <source>scatter of the zero</source>
        <translation>Streuung des Nullpunkts</translation>
    </message>
    <message>
        <source>scatter of {0} readings{1}</source>
        <translation>Streuung von {0} Messwerten{1}</translation>
    </message>
    <message>
        <source>scatter of {0} sets</source>
        <translation>Streuung von {0} Sätzen</translation>
    </message>
    <message>
        <source>scatter of {0} windows</source>
        <translation>Streuung von {0} Fenstern</translation>
    </message>
    <message>
        <source>seal: {0}</source>
        <translation>Siegel: {0}</translation>
    </message>
    <message>
        <source>serial {0}</source>
        <translation>Seriennummer {0}</translation>
    </message>
    <message>
        <source>server device busy</source>
        <translation>Gerät beschäftigt</translation>
    </message>
    <message>
        <source>server device failure</source>
        <translation>Fehler im Gerät</translation>
    </message>
    <message>
        <source>settled value</source>
        <translation>ruhiger Wert</translation>
    </message>
    <message>
        <source>settled {0} {1}</source>
        <translation>ruhiger Wert {0} {1}</translation>
    </message>
    <message>
        <source>several such devices are plugged in.</source>
        <translation>mehrere solche Geräte sind angesteckt.</translation>
    </message>
    <message>
        <source>sheet metal of the body</source>
        <translation>Blech der Karosserie</translation>
    </message>
    <message>
        <source>showed another unit for a while; there it gave no data. Leave its dial alone while recording.</source>
        <translation>zeigte eine Zeit lang eine andere Einheit; dort lieferte es keine Daten. Den Drehschalter beim Aufzeichnen nicht anfassen.</translation>
    </message>
    <message>
        <source>shows {0} again</source>
        <translation>zeigt wieder {0}</translation>
    </message>
    <message>
        <source>silent since</source>
        <translation>still seit</translation>
    </message>
    <message>
        <source>silent since {0} s</source>
        <translation>stumm seit {0} s</translation>
    </message>
    <message>
        <source>some {0} V at least, by what battery, fuse and wires commonly have (no change of speed is there that would tell)</source>
        <translation>mindestens etwa {0} V, nach dem, was Batterie, Sicherung und Leitungen gewöhnlich haben (kein Stufenwechsel ist da, der es zeigte)</translation>
    </message>
    <message>
        <source>speed controller with its plug</source>
        <translation>Gebläseregler mit seinem Stecker</translation>
    </message>
    <message>
        <source>speed switch on 4, with its feed pin</source>
        <translation>Stufenschalter auf 4, mit seinem Plusstift</translation>
    </message>
    <message>
        <source>speed switch on 4, with its ground pin</source>
        <translation>Stufenschalter auf 4, mit seinem Massestift</translation>
    </message>
    <message>
        <source>speed switch plug, feed pin</source>
        <translation>Stecker des Stufenschalters, Plusstift</translation>
    </message>
    <message>
        <source>speed switch plug, feed wire</source>
        <translation>Stecker des Stufenschalters, Plusleitung</translation>
    </message>
    <message>
        <source>speed switch plug, ground pin</source>
        <translation>Stecker des Stufenschalters, Massestift</translation>
    </message>
    <message>
        <source>speed switch plug, ground wire</source>
        <translation>Stecker des Stufenschalters, Masseleitung</translation>
    </message>
    <message>
        <source>speed switch plug, wire 1</source>
        <translation>Stecker des Stufenschalters, Leitung 1</translation>
    </message>
    <message>
        <source>speed switch plug, wire 2</source>
        <translation>Stecker des Stufenschalters, Leitung 2</translation>
    </message>
    <message>
        <source>speed switch plug, wire 3</source>
        <translation>Stecker des Stufenschalters, Leitung 3</translation>
    </message>
    <message>
        <source>speed switch plug, wire 4</source>
        <translation>Stecker des Stufenschalters, Leitung 4</translation>
    </message>
    <message>
        <source>speed switch with its plug</source>
        <translation>Stufenschalter mit seinem Stecker</translation>
    </message>
    <message>
        <source>speed switch&apos;s ground wire and joint</source>
        <translation>Masseleitung und Massepunkt des Stufenschalters</translation>
    </message>
    <message>
        <source>speed switch, contact 1</source>
        <translation>Stufenschalter, Kontakt 1</translation>
    </message>
    <message>
        <source>speed switch, contact 2</source>
        <translation>Stufenschalter, Kontakt 2</translation>
    </message>
    <message>
        <source>speed switch, contact 3</source>
        <translation>Stufenschalter, Kontakt 3</translation>
    </message>
    <message>
        <source>speed switch, contact 4</source>
        <translation>Stufenschalter, Kontakt 4</translation>
    </message>
    <message>
        <source>speed switch, dash trim off</source>
        <translation>Stufenschalter, Armaturenverkleidung abgebaut</translation>
    </message>
    <message>
        <source>speed switch, feed pin</source>
        <translation>Stufenschalter, Plusstift</translation>
    </message>
    <message>
        <source>speed switch, ground pin</source>
        <translation>Stufenschalter, Massestift</translation>
    </message>
    <message>
        <source>speed {0}</source>
        <translation>Stufe {0}</translation>
    </message>
    <message>
        <source>speed {0} ({1} A)</source>
        <translation>Stufe {0} ({1} A)</translation>
    </message>
    <message>
        <source>speed {0} was commanded and not read</source>
        <translation>Stufe {0} war verlangt und wurde nicht gelesen</translation>
    </message>
    <message>
        <source>speed {0} was not run</source>
        <translation>Stufe {0} lief nicht</translation>
    </message>
    <message>
        <source>spread of {0} motors</source>
        <translation>Streuung von {0} Motoren</translation>
    </message>
    <message>
        <source>stated for the sensor by itself</source>
        <translation>für den Aufnehmer allein angegeben</translation>
    </message>
    <message>
        <source>switch</source>
        <translation>Schalter</translation>
    </message>
    <message>
        <source>temperature of {0}, {1} °C</source>
        <translation>Temperatur von {0}, {1} °C</translation>
    </message>
    <message>
        <source>the accuracy of the {0} is stated up to {1} {2}</source>
        <translation>die Genauigkeit des Aufnehmers ({0}) ist nur bis {1} {2} angegeben</translation>
    </message>
    <message>
        <source>the clamp&apos;s zero is off</source>
        <translation>der Nullpunkt der Zange stimmt nicht</translation>
    </message>
    <message>
        <source>the current is more than the meter or the clamp is stated for</source>
        <translation>der Strom ist größer, als für Messgerät oder Zange angegeben ist</translation>
    </message>
    <message>
        <source>the current may be off by a factor of a hundred</source>
        <translation>der Strom kann um den Faktor hundert falsch sein</translation>
    </message>
    <message>
        <source>the current may be off by a factor of a thousand</source>
        <translation>der Strom kann um den Faktor tausend falsch sein</translation>
    </message>
    <message>
        <source>the current was beyond the meter&apos;s range (overload) for {0} s</source>
        <translation>der Strom lag {0} s lang über dem Messbereich (Überlauf)</translation>
    </message>
    <message>
        <source>the current was more than the meter or the clamp is stated for</source>
        <translation>der Strom war größer, als für Messgerät oder Zange angegeben ist</translation>
    </message>
    <message>
        <source>the feed fell to {0} V at once and left nothing across the motor, not even the voltage of the motor that still turned{1}: a feed probe that slipped looks the same</source>
        <translation>Plus fiel sofort auf {0} V, sodass am Motor nichts anlag, nicht einmal die Spannung des noch drehenden Motors{1}: eine abgerutschte Messspitze sähe gleich aus</translation>
    </message>
    <message>
        <source>the feed recovered by {0} V from speed {1} to {2} up to {3} s, as under a load</source>
        <translation>das Plus erholte sich um {0} V von Stufe {1} auf {2}, bis {3} s, wie unter Last</translation>
    </message>
    <message>
        <source>the folder you are in is gone: it was removed, or its disk was taken out.</source>
        <translation>der Ordner, von dem aus gearbeitet wird, ist weg: er wurde gelöscht, oder sein Datenträger wurde entfernt.</translation>
    </message>
    <message>
        <source>the meter showed an overload meanwhile: the true peak is higher than its range goes</source>
        <translation>das Messgerät zeigte derweil Überlauf: die wahre Spitze liegt über seinem Messbereich</translation>
    </message>
    <message>
        <source>the meter&apos;s accuracy for {0} is not stated</source>
        <translation>die Genauigkeit des Messgeräts für {0} ist nicht angegeben</translation>
    </message>
    <message>
        <source>the meter&apos;s widest range ends at {0} {1}</source>
        <translation>der größte Messbereich des Messgeräts endet bei {0} {1}</translation>
    </message>
    <message>
        <source>the meter&apos;s widest range ends at {0} {1} behind the {2}</source>
        <translation>der größte Messbereich des Messgeräts endet hinter dem Aufnehmer ({2}) bei {0} {1}</translation>
    </message>
    <message>
        <source>the name &apos;{0}&apos; {1}</source>
        <translation>der Name &apos;{0}&apos; {1}</translation>
    </message>
    <message>
        <source>the pack would hold {0} GB; {1} GB are the most that a check unpacks.</source>
        <translation>das Paket enthielte {0} GB; eine Prüfung entpackt höchstens {1} GB.</translation>
    </message>
    <message>
        <source>the reading is more than the meter or the sensor is stated for</source>
        <translation>der Messwert ist größer, als für Messgerät oder Aufnehmer angegeben ist</translation>
    </message>
    <message>
        <source>the readings are too slow or averaged to show the true peak</source>
        <translation>die Messwerte sind zu langsam oder gemittelt und zeigen die wahre Spitze nicht</translation>
    </message>
    <message>
        <source>the readings stand at the start-up peak, as at the end of a range</source>
        <translation>die Messwerte bleiben bei der Anlaufspitze stehen wie am Ende eines Messbereichs</translation>
    </message>
    <message>
        <source>the readings stand at this value, as at the end of the range of the meter or the clamp, or at a limit of the controller: the true peak may be higher</source>
        <translation>die Messwerte bleiben bei diesem Wert stehen wie am Ende des Messbereichs von Messgerät oder Zange oder an einer Grenze des Reglers: die wahre Spitze kann höher sein</translation>
    </message>
    <message>
        <source>the return was not read: this is the feed alone</source>
        <translation>das Minus wurde nicht gemessen: das ist das Plus allein</translation>
    </message>
    <message>
        <source>the start-up peak is more than the meter or the clamp is stated for</source>
        <translation>die Anlaufspitze ist mehr, als für Messgerät oder Zange angegeben ist</translation>
    </message>
    <message>
        <source>the start-up peak was beyond the meter&apos;s range (overload)</source>
        <translation>die Anlaufspitze lag über dem Messbereich (Überlauf)</translation>
    </message>
    <message>
        <source>the supply reads as that of a 24 V vehicle, which the limits are not for</source>
        <translation>die Versorgung liest sich wie die eines 24-V-Fahrzeugs, für das die Grenzen nicht gelten</translation>
    </message>
    <message>
        <source>the temperature was not recorded ({0} is stated for {1} to {2} °C)</source>
        <translation>die Temperatur wurde nicht aufgezeichnet ({0} ist für {1} bis {2} °C angegeben)</translation>
    </message>
    <message>
        <source>the voltage across the motor was not read</source>
        <translation>die Spannung über dem Motor wurde nicht gelesen</translation>
    </message>
    <message>
        <source>the voltage to bring it to another by is more than its meter is stated for</source>
        <translation>die Spannung, mit der er umgerechnet wird, ist größer, als für ihr Messgerät angegeben ist</translation>
    </message>
    <message>
        <source>the zero of the clamp is off by {0} A</source>
        <translation>der Nullpunkt der Zange liegt um {0} A daneben</translation>
    </message>
    <message>
        <source>the {0}&apos;s own error for {1} is not stated</source>
        <translation>der Eigenfehler ({0}) für {1} ist nicht angegeben</translation>
    </message>
    <message>
        <source>then {0}</source>
        <translation>dann {0}</translation>
    </message>
    <message>
        <source>this is more than the meter or the clamp is stated for, and mostly too low: the true peak may be higher</source>
        <translation>das ist mehr, als für Messgerät oder Zange angegeben ist, und meist zu wenig: die wahre Spitze kann höher sein</translation>
    </message>
    <message>
        <source>times of the meters; all scatter taken as a trend, {0}/s</source>
        <translation>Zeiten der Messgeräte; alle Streuung als Trend genommen, {0}/s</translation>
    </message>
    <message>
        <source>times of {0}</source>
        <translation>Zeiten von {0}</translation>
    </message>
    <message>
        <source>too fast</source>
        <translation>zu schnell</translation>
    </message>
    <message>
        <source>two rectangular sources dominate (EA-4/02, S10){0}</source>
        <translation>zwei Rechteckquellen überwiegen (EA-4/02, S10){0}</translation>
    </message>
    <message>
        <source>undo of the edit of {0} ({1})</source>
        <translation>Änderung vom {0} rückgängig gemacht ({1})</translation>
    </message>
    <message>
        <source>up to {0} motors</source>
        <translation>bis zu {0} Motoren</translation>
    </message>
    <message>
        <source>usual error of the sensor</source>
        <translation>üblicher Fehler des Aufnehmers</translation>
    </message>
    <message>
        <source>volts by amperes</source>
        <translation>Volt durch Ampere</translation>
    </message>
    <message>
        <source>was written by another version of this program.</source>
        <translation>wurde von einer anderen Fassung dieses Programms geschrieben.</translation>
    </message>
    <message>
        <source>went away while it was looked through.</source>
        <translation>verschwand, während er durchgesehen wurde.</translation>
    </message>
    <message>
        <source>what is said of a part</source>
        <translation>das, was von einem Teil gesagt wird</translation>
    </message>
    <message>
        <source>{0} (a reading every {1} s)</source>
        <translation>{0} (ein Messwert alle {1} s)</translation>
    </message>
    <message>
        <source>{0} ({1} to {2} {3} in a circuit in order) leaves {4}</source>
        <translation>{0} ({1} bis {2} {3} bei einem Stromkreis in Ordnung) lässt übrig: {4}</translation>
    </message>
    <message>
        <source>{0} ({1} to {2} {3} in a circuit in order) points to {4}</source>
        <translation>{0} ({1} bis {2} {3} bei einem Stromkreis in Ordnung) deutet auf: {4}</translation>
    </message>
    <message>
        <source>{0} ({1}) read exactly {2} {3} from {4} s to {5} s, {6} times, while {7}: is the meter on hold, smoothing, repeating its last reading, or at the end of its range? Don&apos;t rely on it there; take the hold off, choose the next range and measure again.</source>
        <translation>{0} ({1}) zeigte genau {2} {3} von {4} s bis {5} s, {6}-mal, während {7}: steht das Messgerät auf Hold, glättet es, wiederholt es den letzten Wert, oder ist sein Messbereich zu Ende? Dort nicht darauf verlassen; Hold ausschalten, den nächsten Messbereich wählen und neu messen.</translation>
    </message>
    <message>
        <source>{0} A at most, over {1} readings or more; asked for: less than {2} % of the base line and {3} A, over {4} readings or more{5}{6}.</source>
        <translation>höchstens {0} A über {1} oder mehr Messwerte; verlangt: unter {2} % der Grundlinie und {3} A, über {4} oder mehr Messwerte{5}{6}.</translation>
    </message>
    <message>
        <source>{0} A or {1} A? The running current{2} is about a thousand times what such a fan draws ({3} s to {4} s): were milliamperes taken for amperes? Check the unit of the column and what was entered of the clamp. Until then the limits say nothing about the motor.</source>
        <translation>{0} A oder {1} A? Der Laufstrom{2} ist etwa das Tausendfache von dem, was so ein Lüfter zieht ({3} s bis {4} s): wurden Milliampere für Ampere genommen? Die Einheit der Spalte prüfen und was zur Zange eingetragen wurde. Bis dahin sagen die Grenzen nichts über den Motor.</translation>
    </message>
    <message>
        <source>{0} UTC</source>
        <translation>{0} UTC</translation>
    </message>
    <message>
        <source>{0} V? A {1} V circuit has at most {2} V: is the decimal point right, and the range?</source>
        <translation>{0} V? Ein {1}-V-Stromkreis hat höchstens {2} V: stimmen das Komma und der Messbereich?</translation>
    </message>
    <message>
        <source>{0} against {1} of {2} taken as good.{3}</source>
        <translation>{0} gegen {1} von {2}, als gut genommen.{3}</translation>
    </message>
    <message>
        <source>{0} and the good ones of {1} have no commanded speed with steady, undoubted current in common.</source>
        <translation>{0} und die guten von {1} haben keine geschaltete Stufe mit ruhigem, unbezweifeltem Strom gemeinsam.</translation>
    </message>
    <message>
        <source>{0} and {1} are columns of one trace that were read at different instants, each with the times that the trace gives it.</source>
        <translation>{0} und {1} sind Spalten einer Aufzeichnung, die zu verschiedenen Zeitpunkten gelesen wurden, jede mit den Zeiten, die die Aufzeichnung ihr gibt.</translation>
    </message>
    <message>
        <source>{0} at speeds {1}</source>
        <translation>{0} auf den Stufen {1}</translation>
    </message>
    <message>
        <source>{0} bytes of text are too many for one column</source>
        <translation>{0} Byte Text sind zu viel für eine Spalte</translation>
    </message>
    <message>
        <source>{0} differs</source>
        <translation>{0} weicht ab</translation>
    </message>
    <message>
        <source>{0} gap</source>
        <translation>{0} Lücke</translation>
    </message>
    <message>
        <source>{0} gaps</source>
        <translation>{0} Lücken</translation>
    </message>
    <message>
        <source>{0} good motors {1} A, s {2} A ({3})</source>
        <translation>{0} gute Motoren {1} A, s {2} A ({3})</translation>
    </message>
    <message>
        <source>{0} is {1}; the good ones were read by meters.</source>
        <translation>{0} ist {1}; die guten wurden von Messgeräten gelesen.</translation>
    </message>
    <message>
        <source>{0} itself is the only good one of {1} in this table: others are needed to hold it against.</source>
        <translation>{0} selbst ist die einzige gute von {1} in dieser Tabelle: Zum Vergleich braucht es andere.</translation>
    </message>
    <message>
        <source>{0} leaves {1}</source>
        <translation>{0} lässt übrig: {1}</translation>
    </message>
    <message>
        <source>{0} more good ones are not named here; the table of baselines names all.</source>
        <translation>{0} weitere gute sind hier nicht genannt; die Vergleichstabelle nennt alle.</translation>
    </message>
    <message>
        <source>{0} not read while it ran steadily</source>
        <translation>{0} nicht gelesen, während er ruhig lief</translation>
    </message>
    <message>
        <source>{0} or {1}</source>
        <translation>{0} oder {1}</translation>
    </message>
    <message>
        <source>{0} points</source>
        <translation>{0} Prozentpunkte</translation>
    </message>
    <message>
        <source>{0} points to {1}</source>
        <translation>{0} deutet auf: {1}</translation>
    </message>
    <message>
        <source>{0} read up to {1} {2} ({3} beyond, {4}), but {5}. Nobody states how far off such a reading is; mostly it is too low. Measure again on a higher range; where there is none, with another meter or sensor.</source>
        <translation>{0} zeigte bis zu {1} {2} ({3} darüber, {4}), aber {5}. Wie falsch ein solcher Messwert ist, sagt niemand; meist ist er zu niedrig. In einem größeren Messbereich noch einmal messen; wo es keinen gibt, mit anderem Messgerät oder Aufnehmer.</translation>
    </message>
    <message>
        <source>{0} read {1} V ({2} s to {3} s): a {4} V circuit has at most {5} V. Check the decimal point, the meter&apos;s range and the scale that was entered. Until then nothing that rests on it says anything of the vehicle.</source>
        <translation>{0} zeigte {1} V ({2} s bis {3} s): ein {4}-V-Stromkreis hat höchstens {5} V. Komma, Messbereich des Messgeräts und eingegebenen Faktor prüfen. Bis dahin sagt nichts, was darauf beruht, etwas über das Fahrzeug.</translation>
    </message>
    <message>
        <source>{0} read {1} V ({2} s to {3} s): a {4} V circuit has at most {5} V. Is it a 24 V vehicle? Then judge it by limits of its own. If not, check the decimal point, the meter&apos;s range and the scale that was entered. Until then nothing is proven of the vehicle.</source>
        <translation>{0} zeigte {1} V ({2} s bis {3} s): ein {4}-V-Kreis hat höchstens {5} V. Ist es ein 24-V-Fahrzeug? Dann nach eigenen Grenzen beurteilen. Wenn nicht, das Dezimalzeichen, den Messbereich und den eingetragenen Maßstab prüfen. Bis dahin ist über das Fahrzeug nichts bewiesen.</translation>
    </message>
    <message>
        <source>{0} readings</source>
        <translation>{0} Messwerte</translation>
    </message>
    <message>
        <source>{0} readings came when their time had passed: their times are only in order</source>
        <translation>{0} Messwerte kamen, als ihre Zeit vorbei war: ihre Zeiten stimmen nur der Reihe nach</translation>
    </message>
    <message>
        <source>{0} s to {1} s</source>
        <translation>{0} s bis {1} s</translation>
    </message>
    <message>
        <source>{0} stands out from the other good motors at {1} beyond chance (Grubbs&apos; test, 5 %): look whether it is good before it stands for its kind.</source>
        <translation>{0} fällt unter den anderen guten Motoren auf, mehr als zufällig ({1}; Grubbs-Test, 5 %): prüfen, ob er gut ist, bevor er für seine Art steht.</translation>
    </message>
    <message>
        <source>{0} the repair</source>
        <translation>{0} der Reparatur</translation>
    </message>
    <message>
        <source>{0} times </source>
        <translation>das {0}-Fache </translation>
    </message>
    <message>
        <source>{0}, as in a circuit in order, leaves {1}</source>
        <translation>{0}, wie bei einem Stromkreis in Ordnung, lässt übrig: {1}</translation>
    </message>
    <message>
        <source>{0}, as in a circuit in order, points to {1}</source>
        <translation>{0}, wie bei einem Stromkreis in Ordnung, deutet auf: {1}</translation>
    </message>
    <message>
        <source>{0}, shared</source>
        <translation>{0}, gemeinsam</translation>
    </message>
    <message>
        <source>{0}. {1} Put that right and measure again.</source>
        <translation>{0}. {1} Das in Ordnung bringen und noch einmal messen.</translation>
    </message>
    <message>
        <source>{0}: NOT WHOLE: {1}</source>
        <translation>{0}: NICHT VOLLSTÄNDIG: {1}</translation>
    </message>
    <message>
        <source>{0}: ONE PART: {1}</source>
        <translation>{0}: NUR EIN TEIL: {1}</translation>
    </message>
    <message>
        <source>{0}: as sealed, but the edits on top of it are NOT WHOLE.</source>
        <translation>{0}: wie versiegelt, aber die Änderungen darüber sind NICHT VOLLSTÄNDIG.</translation>
    </message>
    <message>
        <source>{0}: heat in the controller: can&apos;t tell; {1}.</source>
        <translation>{0}: Wärme im Regler: nicht zu sagen; {1}.</translation>
    </message>
    <message>
        <source>{0}: is in no line of the lists that can be read.</source>
        <translation>{0}: steht in keiner lesbaren Zeile der Listen.</translation>
    </message>
    <message>
        <source>{0}: is too large for the PDF and in the zip alone: hand in both.</source>
        <translation>{0}: ist zu groß für die PDF-Datei und nur in der ZIP-Datei: beide einreichen.</translation>
    </message>
    <message>
        <source>{0}: nothing asked the fan to run then, and it did: look again whether key and speed were as noted; what runs it all the same gets its current elsewhere.</source>
        <translation>{0}: nichts verlangte da, dass das Gebläse läuft, und es lief: noch einmal nachsehen, ob Schlüssel und Stufe wie notiert waren; was es trotzdem laufen lässt, bekommt den Strom anderswoher.</translation>
    </message>
    <message>
        <source>{0}: nothing asked the fan to run then, so that it stood says nothing. Look again with the key on and the fan on high.</source>
        <translation>{0}: nichts verlangte da, dass das Gebläse läuft; dass es stand, sagt nichts. Mit eingeschalteter Zündung und höchster Stufe noch einmal nachsehen.</translation>
    </message>
    <message>
        <source>{0}: voltage drop of the {1}: can&apos;t tell; {2}.</source>
        <translation>{0}: Spannungsabfall ({1}): nicht zu sagen; {2}.</translation>
    </message>
    <message>
        <source>{0}: {1}. {2} Put that right and measure again.</source>
        <translation>{0}: {1}. {2} Das in Ordnung bringen und neu messen.</translation>
    </message>
    <message>
        <source>{0}the sensor&apos;s own {1} added, as a linear sum</source>
        <translation>{0}der eigene Anteil des Aufnehmers ({1}) addiert, als lineare Summe</translation>
    </message>
    <message>
        <source>{0}{1} It was so when the pack was made.</source>
        <translation>{0}{1} So war es, als das Paket gemacht wurde.</translation>
    </message>
    <message>
        <source>{0}{1} is no field of a job card; there are: {2}.</source>
        <translation>{0}{1} ist kein Feld einer Auftragskarte; es gibt: {2}.</translation>
    </message>
    <message>
        <source>± {0} % of the current: {1}</source>
        <translation>± {0} % vom Strom: {1}</translation>
    </message>
    <message>
        <source>± {0} %: {1}, with the engine the same less; calculated</source>
        <translation>± {0} %: {1}, bei gleichem Motorlauf weniger; gerechnet</translation>
    </message>
    <message>
        <source>The readings are too slow for the start-up peak: the true one was higher.</source>
        <translation>Die Messwerte sind zu langsam für die Anlaufspitze: die wahre war höher.</translation>
    </message>
    <message>
        <source> (at the least: {0})</source>
        <translation> (mindestens: {0})</translation>
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
        <source> ({0} to {1} {2} in a circuit in order)</source>
        <translation> ({0} bis {1} {2} bei einem Stromkreis in Ordnung)</translation>
    </message>
    <message>
        <source> In it lies {0}.</source>
        <translation> Darin liegt {0}.</translation>
    </message>
    <message>
        <source> Measured by common steps; {0}.</source>
        <translation> Nach gemeinsamen Stufen gemessen; {0}.</translation>
    </message>
    <message>
        <source> Perhaps it is a file in it: {0}.</source>
        <translation> Vielleicht ist es eine Datei darin: {0}.</translation>
    </message>
    <message>
        <source> and {0} more</source>
        <translation> und {0} weitere</translation>
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
        <source> from {0} A to {1}</source>
        <translation> von {0} A auf {1}</translation>
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
        <source>, as of a motor that is open inside</source>
        <translation>, wie bei einem innen offenen Motor</translation>
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
        <source>; the meter&apos;s accuracy and {0} {1} are not known, and usual ones ({2} A together) could turn the verdict over</source>
        <translation>; nicht bekannt (Genauigkeit des Messgeräts; {0} {1}), und übliche Werte (zusammen {2} A) könnten das Urteil umkehren</translation>
    </message>
    <message>
        <source>; {0} {1} is not known, and a usual one ({2} A) could turn the verdict over</source>
        <translation>; nicht bekannt ({0} {1}), und ein üblicher Wert ({2} A) könnte das Urteil umkehren</translation>
    </message>
    <message>
        <source>A baseline is made of sealed recordings that are as they were sealed, whole and without edits, read by meters (none imported or typed), judged in order with no doubt about a meter (speeds at which a clamp was beyond its range are left out), in the vehicle with housing closed and a filter in it as far as that was stated, at commanded speeds with the motor voltage and all uncertainties known. Each motor counts once, with its newest such run. Measured and simulated ones are never in one baseline.</source>
        <translation>Eine Vergleichsbasis entsteht aus versiegelten Aufzeichnungen, die wie versiegelt, vollständig und ohne Änderungen sind, von Messgeräten gelesen (keine eingelesen oder getippt), als in Ordnung beurteilt und ohne Zweifel an einem Messgerät (Stufen, auf denen eine Zange über ihrem Messbereich war, fallen weg), im Fahrzeug mit geschlossenem Gehäuse und mit Filter, soweit angegeben, auf geschalteten Stufen mit bekannter Motorspannung und allen Unsicherheiten. Jeder Motor zählt einmal, mit seinem neuesten solchen Lauf. Gemessene und simulierte sind nie in einer Vergleichsbasis.</translation>
    </message>
    <message>
        <source>At the highest speed {0} V stood across the old motor and {1} V across the new one: these are different supplies, or a reading is wrong. Check where the probes were, and the nominal voltage.</source>
        <translation>Auf höchster Stufe lagen am alten Motor {0} V und am neuen {1} V an: das sind verschiedene Bordnetze, oder ein Messwert ist falsch. Prüfen, wo die Messspitzen saßen, und die Nennspannung.</translation>
    </message>
    <message>
        <source>At {0} start(s) no current was read yet while the voltage stood, for {1} s at most: as where a clamp is slow or the channels are read one after the other. A motor that is open inside is told there from {2} s on, or from the second reading where they are further apart.</source>
        <translation>Bei {0} Starts wurde noch kein Strom gelesen, während die Spannung anstand, höchstens {1} s lang: wie bei einer langsamen Zange oder nacheinander gelesenen Kanälen. Ein innen offener Motor wird dort ab {2} s gemeldet, oder ab dem zweiten Messwert, wo diese weiter auseinanderliegen.</translation>
    </message>
    <message>
        <source>A{0} may open by what was seen and need not: can&apos;t tell. The current stood {1}. Between the rows taken as a line in logarithms. The opening times of the very fuse would settle it.</source>
        <translation>Nach dem Gelesenen kann eine {0} auslösen und muss nicht: nicht zu sagen. Der Strom stand {1}. Zwischen den Zeilen als Gerade in Logarithmen. Die Auslösezeiten genau dieser Sicherung würden es klären.</translation>
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
        <source>Can&apos;t tell how far off all currents are: with the fan off {0} A were read; the clamp&apos;s zero is off, the circuit stays on, or the fan was switched on before its mark.</source>
        <translation>Nicht zu sagen, um wie viel alle Ströme falsch sind: bei ausgeschaltetem Gebläse wurden {0} A abgelesen; der Nullpunkt der Zange stimmt nicht, der Stromkreis bleibt ein, oder das Gebläse wurde vor seiner Markierung eingeschaltet.</translation>
    </message>
    <message>
        <source>Check that you may read the one and write to the other, and that there is room.</source>
        <translation>Prüfen, ob das eine gelesen und in das andere geschrieben werden darf und ob dort Platz ist.</translation>
    </message>
    <message>
        <source>Commanded and not read</source>
        <translation>Verlangt und nicht gelesen</translation>
    </message>
    <message>
        <source>Commanded and not read: speed {0}.</source>
        <translation>Verlangt und nicht gelesen: Stufe {0}.</translation>
    </message>
    <message>
        <source>Current although off is commanded{0}: {1}; the circuit stays on, or the clamp was not zeroed{2}.</source>
        <translation>Strom, obwohl Aus geschaltet ist{0}: {1}; der Kreis bleibt an, oder die Zange wurde nicht genullt{2}.</translation>
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
        <source>Edit on top of the recording: {0}</source>
        <translation>Änderung über der Aufzeichnung: {0}</translation>
    </message>
    <message>
        <source>Edits on top of the recording are NOT WHOLE: {0}</source>
        <translation>Die Änderungen über der Aufzeichnung sind NICHT VOLLSTÄNDIG: {0}</translation>
    </message>
    <message>
        <source>Expected PERCENT+ABSOLUTE, such as 1.5+0.3 for 1.5 % of the reading plus 0.3 A; where its data sheet says how far it goes, 1.5+0.3 up to 40.</source>
        <translation>Erwartet wird PROZENT+FEST, etwa 1.5+0.3 für 1,5 % vom Messwert plus 0,3 A; wo das Datenblatt sagt, wie weit er reicht, 1.5+0.3 bis 40.</translation>
    </message>
    <message>
        <source>Expected tables such as [speed.1], up to {0}.</source>
        <translation>Erwartet werden Tabellen wie [speed.1], bis {0}.</translation>
    </message>
    <message>
        <source>Fuse: {0} A loaded to {1} by the old{2} and {3} A to {4} by the new{5}{6}{7}.</source>
        <translation>Sicherung: {0} A, vom alten zu {1} belastet{2}, und {3} A, vom neuen zu {4} belastet{5}{6}{7}.</translation>
    </message>
    <message>
        <source>Give the folder of one recording, or a pack: its folder, zip or PDF.</source>
        <translation>Den Ordner einer Aufzeichnung angeben oder ein Paket: seinen Ordner, sein Zip oder PDF.</translation>
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
        <source>How good the meter of the current is was not stated: no ± holds the meter&apos;s own error.</source>
        <translation>Wie genau das Messgerät des Stroms ist, wurde nicht angegeben: Kein ± enthält dessen eigenen Fehler.</translation>
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
        <source>It goes on from {0}, whose disk failed: what came before is not in it. Put together with: {1}</source>
        <translation>Sie setzt {0} fort, deren Datenträger versagte: Was davor war, ist nicht darin. Zusammengesetzt wird mit: {1}</translation>
    </message>
    <message>
        <source>It keeps a recording from being sealed while it is written. If no program, of another user perhaps, is recording there, take it away and try again.</source>
        <translation>Sie verhindert, dass eine Aufzeichnung versiegelt wird, während sie geschrieben wird. Zeichnet dort kein Programm auf, auch keines eines anderen Benutzers, die Sperre entfernen und noch einmal versuchen.</translation>
    </message>
    <message>
        <source>It keeps two programs from changing the same file at once. If no program, of another user perhaps, is at work there, take it away and try again.</source>
        <translation>Sie verhindert, dass zwei Programme zugleich dieselbe Datei ändern. Ist dort kein Programm am Werk, auch keines eines anderen Benutzers, die Sperre entfernen und noch einmal versuchen.</translation>
    </message>
    <message>
        <source>Judged by the limits {0}, given for this judgement, and not by those it was recorded with ({1}). They differ in {2}.</source>
        <translation>Beurteilt nach den Grenzen {0}, die für diese Beurteilung gegeben wurden, und nicht nach denen der Aufzeichnung ({1}). Sie unterscheiden sich in {2}.</translation>
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
        <source>Not all readings can be taken as they stand. {0}</source>
        <translation>Nicht alle Messwerte können so genommen werden. {0}</translation>
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
        <source>Of {0} speeds only speed {1} differs. Each is held against its own uncertainty at about 95 %, so that of two equal motors one speed in {2} differs by chance in up to {3} % of comparisons: record both again before it counts.</source>
        <translation>Von {0} Stufen weicht nur Stufe {1} ab. Jede wird mit ihrer eigenen Unsicherheit bei etwa 95 % verglichen, sodass bei zwei gleichen Motoren eine von {2} Stufen in bis zu {3} % der Vergleiche zufällig abweicht: beide noch einmal aufzeichnen, bevor es zählt.</translation>
    </message>
    <message>
        <source>Opening of {0}: can&apos;t tell, as {1}.</source>
        <translation>Auslösen ({0}): nicht zu sagen, da {1}.</translation>
    </message>
    <message>
        <source>Put its disk in again, or say where it is now with --before. Each part can be reviewed by itself.</source>
        <translation>Sein Laufwerk wieder einsetzen, oder mit --before sagen, wo er jetzt ist. Jeder Teil lässt sich für sich beurteilen.</translation>
    </message>
    <message>
        <source>Put the file that it leads to in its place, or take it away.</source>
        <translation>Die Datei, auf die sie zeigt, an ihre Stelle legen oder die Verknüpfung entfernen.</translation>
    </message>
    <message>
        <source>Put together with: {0}</source>
        <translation>Zusammensetzen mit: {0}</translation>
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
        <source>The current was gone once, for {0} s, which the limits do not count.</source>
        <translation>Der Strom war einmal {0} s lang weg, was die Grenzen nicht zählen.</translation>
    </message>
    <message>
        <source>The current was gone {0} times for less than {1} s each, {2} s together, which the limits do not count.</source>
        <translation>Der Strom war {0} Mal weniger als {1} s weg, zusammen {2} s, was die Grenzen nicht zählen.</translation>
    </message>
    <message>
        <source>The job card has the repair on {0}; the run {1} is of {2}.</source>
        <translation>Nach der Auftragskarte war die Reparatur am {0}; der Lauf {1} ist vom {2}.</translation>
    </message>
    <message>
        <source>The photo {0} lies outside the card&apos;s folder and goes into no pack. Add it again: that copies it there.</source>
        <translation>Das Foto {0} liegt außerhalb des Ordners der Karte und kommt in kein Paket. Noch einmal hinzufügen: Dabei wird es dorthin kopiert.</translation>
    </message>
    <message>
        <source>The readings can&apos;t be taken as they stand. {0}</source>
        <translation>Die Messwerte können so nicht genommen werden. {0}</translation>
    </message>
    <message>
        <source>The ripple is consistent with a commutator bar that carries too little current.</source>
        <translation>Die Welligkeit passt zu einer Kollektorlamelle, die zu wenig Strom führt.</translation>
    </message>
    <message>
        <source>The tap test falls short of the accepted form in: {0}</source>
        <translation>Dem Klopftest fehlt zur anerkannten Form: {0}</translation>
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
        <translation>Zu langsam für die Lamellen des Kollektors: etwa {0} Messwerte/s sind nötig.</translation>
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
        <source>What stands at {0} is {1}, less than nothing.</source>
        <translation>Bei {0} steht {1}, weniger als nichts.</translation>
    </message>
    <message>
        <source>What stands at {0} is {1}, without a number.</source>
        <translation>Bei {0} steht {1}, ohne eine Zahl.</translation>
    </message>
    <message>
        <source>What was read can&apos;t open {0}, but the readings are too slow to show the start-up peak, which may reach {1} A for up to {2} s: can&apos;t tell; readings 5 ms apart or closer would settle it.</source>
        <translation>Was gelesen wurde, kann {0} nicht auslösen, aber die Messwerte sind zu langsam für die Anlaufspitze, die {1} A für bis zu {2} s erreichen kann: nicht zu sagen; Messwerte alle 5 ms oder dichter würden es klären.</translation>
    </message>
    <message>
        <source>When it stands again: feed within 0.7 V of the battery, return near 0 V, current 0 A; then, key off, turn the wheel a little by hand: if it starts now, brush or commutator is bad. Fit the new motor and record the same speeds: no dropout, current within limits, below 80 % of the fuse on high. {0} {1}</source>
        <translation>Wenn er wieder steht: Plus höchstens 0,7 V unter der Batterie, Minus nahe 0 V, Strom 0 A; dann, Zündung aus, das Rad ein wenig von Hand drehen: läuft er jetzt an, ist Bürste oder Kollektor schlecht. Den neuen Motor einbauen und dieselben Stufen aufzeichnen: kein Aussetzer, Strom in den Grenzwerten, auf der höchsten Stufe unter 80 % der Sicherung. {0} {1}</translation>
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
        <source>base line</source>
        <translation>Grundlinie</translation>
    </message>
    <message>
        <source>bytes come, none is understood</source>
        <translation>Bytes kommen, keines wird verstanden</translation>
    </message>
    <message>
        <source>can&apos;t be copied into {0}: {1}.</source>
        <translation>kann nicht nach {0} kopiert werden: {1}.</translation>
    </message>
    <message>
        <source>can&apos;t be used as a lock: {0}.</source>
        <translation>taugt nicht als Sperre: {0}.</translation>
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
        <source>holds {0} baselines of {1} for {2} nominal only, not for {3} V.</source>
        <translation>enthält gute der Nummer {1} ({0}) nur für {2} Nennspannung, nicht für {3} V.</translation>
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
        <source>is a link, not a file: edits are only written beside the recording itself.</source>
        <translation>ist eine Verknüpfung, keine Datei: Nachträge werden nur neben die Aufzeichnung selbst geschrieben.</translation>
    </message>
    <message>
        <source>is a recording.</source>
        <translation>ist eine Aufzeichnung.</translation>
    </message>
    <message>
        <source>is being recorded or sealed by a running program.</source>
        <translation>wird gerade von einem laufenden Programm aufgezeichnet oder versiegelt.</translation>
    </message>
    <message>
        <source>it changed its measuring range ({0})</source>
        <translation>es wechselte den Messbereich ({0})</translation>
    </message>
    <message>
        <source>it is a link, not a file</source>
        <translation>es ist eine Verknüpfung, keine Datei</translation>
    </message>
    <message>
        <source>it is a pipe, a device or a folder, not a file</source>
        <translation>es ist eine Pipe, ein Gerät oder ein Ordner, keine Datei</translation>
    </message>
    <message>
        <source>it is longer than {0} MiB</source>
        <translation>es ist länger als {0} MiB</translation>
    </message>
    <message>
        <source>it lies outside the job card&apos;s folder</source>
        <translation>es liegt außerhalb des Ordners der Auftragskarte</translation>
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
        <source>its motor voltage is {0}, the good ones&apos; currents stand at {1} V, and no current can be brought from there to here</source>
        <translation>die Motorspannung ist {0}, die Ströme der guten gelten bei {1} V, und kein Strom lässt sich von dort nach hier bringen</translation>
    </message>
    <message>
        <source>its port was gone (plug, cable or adapter)</source>
        <translation>sein Anschluss war weg (Stecker, Kabel oder Adapter)</translation>
    </message>
    <message>
        <source>its text is damaged: {0}</source>
        <translation>ihr Text ist beschädigt: {0}</translation>
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
        <source>nobody recorded whether this was the highest speed</source>
        <translation>niemand hat aufgezeichnet, ob dies die höchste Stufe war</translation>
    </message>
    <message>
        <source>none seen</source>
        <translation>keiner zu sehen</translation>
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
        <source>other programs take every folder in it</source>
        <translation>andere Programme belegen jeden Ordner darin</translation>
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
        <source>speed {0} at {1} s</source>
        <translation>Stufe {0} bei {1} s</translation>
    </message>
    <message>
        <source>speed {0} draws {1} (at most {2} A)</source>
        <translation>Stufe {0} zieht {1} (höchstens {2} A)</translation>
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
        <source>speeds were recorded, and those count</source>
        <translation>Stufen wurden aufgezeichnet, und diese zählen</translation>
    </message>
    <message>
        <source>standard uncertainty {0} s</source>
        <translation>Standardunsicherheit {0} s</translation>
    </message>
    <message>
        <source>start-up current too high for the relay: contact welded</source>
        <translation>Anlaufstrom zu hoch für das Relais: Kontakt verschweißt</translation>
    </message>
    <message>
        <source>start-up peak</source>
        <translation>Anlaufspitze</translation>
    </message>
    <message>
        <source>start-ups of cabin fans in general, as none was seen</source>
        <translation>Anläufe von Innenraumgebläsen im Allgemeinen, da keiner zu sehen war</translation>
    </message>
    <message>
        <source>steady load of the fuse</source>
        <translation>Dauerlast der Sicherung</translation>
    </message>
    <message>
        <source>step begins</source>
        <translation>beginnt die Stufe</translation>
    </message>
    <message>
        <source>step {0} curve</source>
        <translation>Stufe {0} Kurve</translation>
    </message>
    <message>
        <source>step {0} {1} {2}</source>
        <translation>Stufe {0} {1} {2}</translation>
    </message>
    <message>
        <source>still moving</source>
        <translation>noch in Bewegung</translation>
    </message>
    <message>
        <source>still moving: by {0} {1} within a second or so</source>
        <translation>noch in Bewegung: um {0} {1} innerhalb etwa einer Sekunde</translation>
    </message>
    <message>
        <source>stopped before it was known.</source>
        <translation>beendet, bevor es bekannt war.</translation>
    </message>
    <message>
        <source>straight across ({0})</source>
        <translation>direkt gemessen ({0})</translation>
    </message>
    <message>
        <source>straight across the controller, feed to output</source>
        <translation>direkt über dem Regler, Plus bis Ausgang</translation>
    </message>
    <message>
        <source>straight across the high relay contact</source>
        <translation>direkt über dem Kontakt des Relais höchste Stufe</translation>
    </message>
    <message>
        <source>straight across the main fuse</source>
        <translation>direkt über der Hauptsicherung</translation>
    </message>
    <message>
        <source>straight across the module, feed to output</source>
        <translation>direkt über dem Modul, Plus bis Ausgang</translation>
    </message>
    <message>
        <source>straight across the motor plug&apos;s feed pin</source>
        <translation>direkt über dem Plusstift des Motorsteckers</translation>
    </message>
    <message>
        <source>straight across the motor plug&apos;s return pin</source>
        <translation>direkt über dem Minusstift des Motorsteckers</translation>
    </message>
    <message>
        <source>straight across the relay contact</source>
        <translation>direkt über dem Relaiskontakt</translation>
    </message>
    <message>
        <source>stretch {0} {1}</source>
        <translation>Strecke {0} {1}</translation>
    </message>
    <message>
        <source>supply not known to be the same</source>
        <translation>Versorgung nicht nachweislich dieselbe</translation>
    </message>
    <message>
        <source>switch off sleep in the system&apos;s settings, and leave the lid open</source>
        <translation>den Ruhezustand in den Systemeinstellungen abschalten und den Deckel offen lassen</translation>
    </message>
    <message>
        <source>taken as {0} V ± {1} %: common practice, no source</source>
        <translation>angenommen als {0} V ± {1} %: übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <source>taken out</source>
        <translation>entfernt</translation>
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
        <source>text comes, but no profile reads it: {0}. Copy the nearest profile and change [lines] to fit; `meterlog check-profile` checks it.</source>
        <translation>Text kommt, aber kein Profil liest ihn: {0}. Das nächstliegende Profil kopieren und [lines] anpassen; `meterlog check-profile` prüft es.</translation>
    </message>
    <message>
        <source>text comes, but not as the profile says</source>
        <translation>Text kommt, aber nicht wie im Profil</translation>
    </message>
    <message>
        <source>the PDF besides its pages</source>
        <translation>das PDF außer seinen Seiten</translation>
    </message>
    <message>
        <source>the air&apos;s density alone makes {0} % of current at the new one</source>
        <translation>allein die Dichte der Luft macht beim neuen {0} % Strom aus</translation>
    </message>
    <message>
        <source>the battery held</source>
        <translation>die Batterie hielt</translation>
    </message>
    <message>
        <source>the battery held at {0} V</source>
        <translation>die Batterie hielt bei {0} V</translation>
    </message>
    <message>
        <source>the battery&apos;s own reading fell to {0} V: the supply itself went, or that probe</source>
        <translation>der Messwert der Batterie selbst fiel auf {0} V: die Versorgung selbst ging weg, oder diese Messspitze</translation>
    </message>
    <message>
        <source>the check could not be sealed: {0}</source>
        <translation>die Prüfung konnte nicht versiegelt werden: {0}</translation>
    </message>
    <message>
        <source>the circuit can&apos;t be kept: {0}.</source>
        <translation>der Stromlauf kann nicht aufbewahrt werden: {0}.</translation>
    </message>
    <message>
        <source>the circuit check</source>
        <translation>die Stromlaufprüfung</translation>
    </message>
    <message>
        <source>the clamp is to be doubted</source>
        <translation>an der Zange ist zu zweifeln</translation>
    </message>
    <message>
        <source>the clamp&apos;s</source>
        <translation>Zange:</translation>
    </message>
    <message>
        <source>the command came and is at {0} V</source>
        <translation>die Ansteuerung kam und liegt bei {0} V</translation>
    </message>
    <message>
        <source>the command channel never answered to any speed</source>
        <translation>der Kanal der Ansteuerung reagierte auf keine Stufe</translation>
    </message>
    <message>
        <source>the command reads {0} V</source>
        <translation>die Ansteuerung zeigt {0} V</translation>
    </message>
    <message>
        <source>the command stayed at {0} V</source>
        <translation>die Ansteuerung blieb bei {0} V</translation>
    </message>
    <message>
        <source>the command stayed at {0} V, as when off, though speed {1} was commanded</source>
        <translation>die Ansteuerung blieb bei {0} V, wie bei Aus, obwohl Stufe {1} geschaltet war</translation>
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
        <source>the command went {0} only {1} s after the current</source>
        <translation>die Ansteuerung ging {0}, erst {1} s nach dem Strom</translation>
    </message>
    <message>
        <source>the command went {0} {1}</source>
        <translation>die Ansteuerung ging {0} {1}</translation>
    </message>
    <message>
        <source>the commanded speed</source>
        <translation>die geschaltete Stufe</translation>
    </message>
    <message>
        <source>the computer slept for {0}, ended within the last second: nothing was measured in that time, and it is {1} in the times of this recording</source>
        <translation>der Computer schlief {0}, bis innerhalb der letzten Sekunde: in dieser Zeit wurde nichts gemessen, und sie ist in den Zeiten dieser Aufzeichnung {1}</translation>
    </message>
    <message>
        <source>the computer&apos;s clock was set {0} by {1}{2}: the times of this recording go on by a clock that can&apos;t be set, from the date and time of its start</source>
        <translation>die Uhr des Computers wurde {0} gestellt, um {1}{2}: die Zeiten dieser Aufzeichnung laufen nach einer Uhr weiter, die niemand stellen kann, ab Datum und Zeit ihres Beginns</translation>
    </message>
    <message>
        <source>the controller is a resistor pack: its heat sits in the air stream and is bounded by its thermal limiter, not by a figure for a linear controller</source>
        <translation>der Regler ist ein Widerstandspaket: seine Wärme liegt im Luftstrom und ist durch seine Thermosicherung begrenzt, nicht durch einen Wert für einen linearen Regler</translation>
    </message>
    <message>
        <source>the controller is pulsed: means of a switched voltage and current do not lie on a motor&apos;s curve</source>
        <translation>der Regler ist getaktet: Mittelwerte geschalteter Spannung und geschalteten Stroms liegen auf keiner Motorkurve</translation>
    </message>
    <message>
        <source>the controller is pulsed: means of voltage and current do not give its heat; what it loses is in its switching</source>
        <translation>der Regler taktet: Mittelwerte von Spannung und Strom geben seine Wärme nicht; was er verliert, liegt im Schalten</translation>
    </message>
    <message>
        <source>the controller&apos;s ground is at {0} V, neither risen with it nor at nothing</source>
        <translation>die Masse des Reglers liegt bei {0} V, weder mitgestiegen noch bei null</translation>
    </message>
    <message>
        <source>the controller&apos;s ground rose to {0} V: the ground wire is open, not the controller</source>
        <translation>die Masse des Reglers stieg auf {0} V: die Masseleitung ist offen, nicht der Regler</translation>
    </message>
    <message>
        <source>the controller&apos;s ground rose with it: resistance in the ground wire</source>
        <translation>die Masse des Reglers stieg mit: Widerstand in der Masseleitung</translation>
    </message>
    <message>
        <source>the controller&apos;s ground stayed at {0} V and so did its command: consistent with an open controller (or its plug)</source>
        <translation>die Masse des Reglers blieb bei {0} V und ebenso seine Ansteuerung: passend zu einem offenen Regler (oder seinem Stecker)</translation>
    </message>
    <message>
        <source>the controller&apos;s ground stayed at {0} V: the controller or its command, not the ground wire</source>
        <translation>die Masse des Reglers blieb bei {0} V: der Regler oder seine Ansteuerung, nicht die Masseleitung</translation>
    </message>
    <message>
        <source>the current changed within it ({0})</source>
        <translation>der Strom änderte sich darin ({0})</translation>
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
        <source>the current may be off by a factor of ten</source>
        <translation>der Strom kann um den Faktor zehn falsch sein</translation>
    </message>
    <message>
        <source>the current meter repeated one reading meanwhile</source>
        <translation>das Strommessgerät wiederholte derweil einen Messwert</translation>
    </message>
    <message>
        <source>the current meter reports that its own battery is low</source>
        <translation>das Strommessgerät meldet, dass seine eigene Batterie schwach ist</translation>
    </message>
    <message>
        <source>the current moved by {0} A</source>
        <translation>der Strom sich um {0} A bewegte</translation>
    </message>
    <message>
        <source>the current&apos;s uncertainty</source>
        <translation>die Unsicherheit des Stroms</translation>
    </message>
    <message>
        <source>the device has hung up</source>
        <translation>das Gerät hat aufgelegt</translation>
    </message>
    <message>
        <source>the entry could not be kept: {0}</source>
        <translation>der Eintrag konnte nicht aufbewahrt werden: {0}</translation>
    </message>
    <message>
        <source>the fan stands</source>
        <translation>das Gebläse steht</translation>
    </message>
    <message>
        <source>the feed is pulsed: single pulses are no dropouts</source>
        <translation>die Versorgung ist getaktet: einzelne Pulse sind keine Aussetzer</translation>
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
        <source>the feed {0} by {1} V from speed {2} to {3} up to {4} s, as under a load</source>
        <translation>das Plus {0} um {1} V von Stufe {2} auf {3}, bis {4} s, wie unter Last</translation>
    </message>
    <message>
        <source>the file</source>
        <translation>die Datei</translation>
    </message>
    <message>
        <source>the file is shorter than it should be</source>
        <translation>die Datei ist kürzer, als sie sein sollte</translation>
    </message>
    <message>
        <source>the filter was clogged</source>
        <translation>der Filter war verstopft</translation>
    </message>
    <message>
        <source>the flaps make 3 to 10 %</source>
        <translation>die Klappen machen 3 bis 10 % aus</translation>
    </message>
    <message>
        <source>the folder is another user&apos;s</source>
        <translation>der Ordner gehört einem anderen Benutzer</translation>
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
        <source>the head&apos;s output stage</source>
        <translation>die Endstufe des Bedienteils</translation>
    </message>
    <message>
        <source>the head&apos;s output stage, a short in the wire</source>
        <translation>die Endstufe des Bedienteils, ein Kurzschluss in der Leitung</translation>
    </message>
    <message>
        <source>the head&apos;s own supply, ground or bus first</source>
        <translation>zuerst Versorgung, Masse oder Bus des Bedienteils selbst</translation>
    </message>
    <message>
        <source>the housing was open</source>
        <translation>das Gehäuse war offen</translation>
    </message>
    <message>
        <source>the judgement&apos;s temporary file can&apos;t be read back: {0}.</source>
        <translation>die Zwischendatei der Beurteilung lässt sich nicht zurücklesen: {0}.</translation>
    </message>
    <message>
        <source>the leads are on something</source>
        <translation>die Leitungen liegen an etwas an</translation>
    </message>
    <message>
        <source>the library for such devices is not installed.</source>
        <translation>die Bibliothek für solche Geräte ist nicht installiert.</translation>
    </message>
    <message>
        <source>the library for such instruments is not installed.</source>
        <translation>die Bibliothek für solche Instrumente ist nicht installiert.</translation>
    </message>
    <message>
        <source>the limit {0} was changed from {1} to {2}</source>
        <translation>der Grenzwert {0} wurde von {1} auf {2} geändert</translation>
    </message>
    <message>
        <source>the mark {0} was moved from {1} s to {2} s</source>
        <translation>die Marke {0} wurde von {1} s auf {2} s verschoben</translation>
    </message>
    <message>
        <source>the mark {0} {1}</source>
        <translation>die Marke {0} {1}</translation>
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
        <source>the meter shows an overload: choose a wider range</source>
        <translation>das Messgerät zeigt Überlauf: einen größeren Bereich wählen</translation>
    </message>
    <message>
        <source>the meter shows {0}, expected {1}: was its dial turned?</source>
        <translation>das Messgerät zeigt {0}, erwartet {1}: wurde der Drehschalter gedreht?</translation>
    </message>
    <message>
        <source>the meter&apos;s input resistance must be above 0 Ω.</source>
        <translation>der Eingangswiderstand des Messgeräts muss über 0 Ω sein.</translation>
    </message>
    <message>
        <source>the meters are not connected, or are being read already.</source>
        <translation>die Messgeräte sind nicht verbunden, oder sie werden schon gelesen.</translation>
    </message>
    <message>
        <source>the motor current was not read.</source>
        <translation>der Motorstrom wurde nicht gemessen.</translation>
    </message>
    <message>
        <source>the motor voltage is not known</source>
        <translation>die Motorspannung ist nicht bekannt</translation>
    </message>
    <message>
        <source>the motor voltage was not read; read motor feed and motor return</source>
        <translation>die Motorspannung wurde nicht gemessen; Plus und Minus des Motors messen</translation>
    </message>
    <message>
        <source>the motor voltages ({0}) are too far apart to bring the currents to one</source>
        <translation>die Motorspannungen ({0}) liegen zu weit auseinander, um die Ströme auf eine umzurechnen</translation>
    </message>
    <message>
        <source>the motor voltages lie too near each other ({0} V to {1} V; the highest must be {2} times the lowest); run it at its lowest and highest speed</source>
        <translation>die Motorspannungen liegen zu nah beieinander ({0} V bis {1} V; die höchste muss das {2}-Fache der niedrigsten sein); auf kleinster und höchster Stufe laufen lassen</translation>
    </message>
    <message>
        <source>the motor was on the bench</source>
        <translation>der Motor war auf der Werkbank</translation>
    </message>
    <message>
        <source>the motor&apos;s own curve</source>
        <translation>die eigene Kurve des Motors</translation>
    </message>
    <message>
        <source>the name &apos;{0}&apos; leads out of its folder or is odd</source>
        <translation>der Name &apos;{0}&apos; führt aus seinem Ordner hinaus oder ist seltsam</translation>
    </message>
    <message>
        <source>the newest reading is {0} s old: is the meter still there?</source>
        <translation>der neueste Messwert ist {0} s alt: ist das Messgerät noch da?</translation>
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
        <source>the pack can&apos;t be written: {0}.</source>
        <translation>das Paket kann nicht geschrieben werden: {0}.</translation>
    </message>
    <message>
        <source>the part before it is not there.</source>
        <translation>der Teil davor ist nicht da.</translation>
    </message>
    <message>
        <source>the points leave the motor&apos;s figures open: any of many curves would go through them</source>
        <translation>die Punkte lassen die Kennwerte des Motors offen: viele Kurven gingen hindurch</translation>
    </message>
    <message>
        <source>the points lie {0} % off any curve of one motor with a fan: something else changed between the speeds (air, contact, drag)</source>
        <translation>die Punkte liegen {0} % neben jeder Kurve eines Motors mit Gebläserad: zwischen den Stufen hat sich etwas anderes geändert (Luft, Kontakt, Schwergang)</translation>
    </message>
    <message>
        <source>the points would need a no-load current below zero beyond its uncertainty</source>
        <translation>die Punkte brauchten einen Leerlaufstrom unter null, über seine Unsicherheit hinaus</translation>
    </message>
    <message>
        <source>the points would need a {0} below zero</source>
        <translation>die Punkte brauchten unter null: {0}</translation>
    </message>
    <message>
        <source>the port has been closed.</source>
        <translation>der Anschluss wurde geschlossen.</translation>
    </message>
    <message>
        <source>the port has no name.</source>
        <translation>der Anschluss hat keinen Namen.</translation>
    </message>
    <message>
        <source>the port is open again, but no reading has come yet</source>
        <translation>der Anschluss ist wieder offen, aber noch kein Messwert da</translation>
    </message>
    <message>
        <source>the port went away ({0}).</source>
        <translation>der Anschluss ging verloren ({0}).</translation>
    </message>
    <message>
        <source>the readings are not on the disk.</source>
        <translation>die Messwerte sind nicht auf dem Laufwerk.</translation>
    </message>
    <message>
        <source>the readings could not all be written</source>
        <translation>die Messwerte konnten nicht alle geschrieben werden</translation>
    </message>
    <message>
        <source>the recording ended first.</source>
        <translation>die Aufzeichnung endete vorher.</translation>
    </message>
    <message>
        <source>the recording holds no {0} at {1} that was {2}.</source>
        <translation>die Aufzeichnung hat kein {0} bei {1}, das {2}.</translation>
    </message>
    <message>
        <source>the rest</source>
        <translation>dem Rest</translation>
    </message>
    <message>
        <source>the return rose but the controller&apos;s ground did not: consistent with a controller that gave less{0}</source>
        <translation>das Minus stieg, aber die Masse des Reglers nicht: passend zu einem Regler, der weniger gab{0}</translation>
    </message>
    <message>
        <source>the return rose to {0} V only and stayed there, which no open ground side does once the motor stands: a return probe that slipped and floats looks the same</source>
        <translation>Minus stieg nur auf {0} V und blieb dort, was keine offene Masseseite tut, wenn der Motor steht: eine abgerutschte, offene Messspitze sähe gleich aus</translation>
    </message>
    <message>
        <source>the start-up seen at {0} s</source>
        <translation>der bei {0} s gesehene Anlauf</translation>
    </message>
    <message>
        <source>the step{0} was relabelled from {1} to {2}</source>
        <translation>die Stufe{0} wurde von {1} in {2} umbenannt</translation>
    </message>
    <message>
        <source>the strongest speed seen</source>
        <translation>die stärkste gesehene Stufe</translation>
    </message>
    <message>
        <source>the system refuses to stay awake</source>
        <translation>das System weigert sich, wach zu bleiben</translation>
    </message>
    <message>
        <source>the system takes no power request</source>
        <translation>das System nimmt keine solche Anforderung an</translation>
    </message>
    <message>
        <source>the system&apos;s libusb is missing.</source>
        <translation>dem System fehlt libusb.</translation>
    </message>
    <message>
        <source>the tables are of another program</source>
        <translation>die Tabellen sind von einem anderen Programm</translation>
    </message>
    <message>
        <source>the trace moved when the leads were moved at {0} s: fix the probes, and begin again.</source>
        <translation>die Kurve bewegte sich, als die Messleitungen bei {0} s bewegt wurden: die Messspitzen befestigen und von vorn beginnen.</translation>
    </message>
    <message>
        <source>the trace moved when this was moved: {0}; put that right before the motor.</source>
        <translation>die Kurve bewegte sich, als dies bewegt wurde: {0}; das vor dem Motor in Ordnung bringen.</translation>
    </message>
    <message>
        <source>the turning motor&apos;s own voltage fell from {0} V to {1} V in {2} s</source>
        <translation>die eigene Spannung des drehenden Motors fiel in {2} s von {0} V auf {1} V</translation>
    </message>
    <message>
        <source>the two wires between module and motor</source>
        <translation>die beiden Leitungen zwischen Modul und Motor</translation>
    </message>
    <message>
        <source>the uncertainty of the current is not known</source>
        <translation>die Unsicherheit des Stroms ist nicht bekannt</translation>
    </message>
    <message>
        <source>the uncertainty of the motor voltage is not known</source>
        <translation>die Unsicherheit der Motorspannung ist nicht bekannt</translation>
    </message>
    <message>
        <source>the uncertainty of {0}</source>
        <translation>die Unsicherheit von {0}</translation>
    </message>
    <message>
        <source>the usual exponent</source>
        <translation>den üblichen Exponenten</translation>
    </message>
    <message>
        <source>the usual table of such fuses, from memory</source>
        <translation>die übliche Tabelle solcher Sicherungen, aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>the value is no number.</source>
        <translation>der Wert ist keine Zahl.</translation>
    </message>
    <message>
        <source>the virtual bench did not start: {0}</source>
        <translation>der virtuelle Prüfstand startete nicht: {0}</translation>
    </message>
    <message>
        <source>the virtual meter did not start: {0}</source>
        <translation>das virtuelle Messgerät startete nicht: {0}</translation>
    </message>
    <message>
        <source>the voltage across the motor moved by {0} V</source>
        <translation>die Spannung am Motor sich um {0} V bewegte</translation>
    </message>
    <message>
        <source>the voltage behind the relay held</source>
        <translation>die Spannung hinter dem Relais hielt</translation>
    </message>
    <message>
        <source>the voltage that tells the side was one reading repeated</source>
        <translation>die Spannung, die die Seite nennt, war ein wiederholter Messwert</translation>
    </message>
    <message>
        <source>the voltage&apos;s uncertainty</source>
        <translation>die Unsicherheit der Spannung</translation>
    </message>
    <message>
        <source>the {0} A that went must have raised the feed by {1}, but it moved by {2} V</source>
        <translation>ein Wegfall von {0} A musste das Plus heben, um {1}; es bewegte sich aber um {2} V</translation>
    </message>
    <message>
        <source>the {0} would be {1} ± {2} {3}: not determined; more speeds or better meters would settle it</source>
        <translation>{0} wäre {1} ± {2} {3}: nicht bestimmt; mehr Stufen oder bessere Messgeräte würden es klären</translation>
    </message>
    <message>
        <source>the {0}&apos;s</source>
        <translation>{0}</translation>
    </message>
    <message>
        <source>the {0}&apos;s probe is known to have slipped about then, so that its voltage tells no side</source>
        <translation>die Messspitze an {0} ist um diese Zeit nachweislich abgerutscht, sodass ihre Spannung keine Seite nennt</translation>
    </message>
    <message>
        <source>there are two entries {0}</source>
        <translation>es gibt zwei Einträge {0}</translation>
    </message>
    <message>
        <source>there is another {0} at that very time already.</source>
        <translation>genau zu dieser Zeit gibt es schon: {0}.</translation>
    </message>
    <message>
        <source>there is no accuracy of the meter to which the sensor&apos;s could be added.</source>
        <translation>es gibt keine Genauigkeit des Messgeräts, zu der die des Aufnehmers zu addieren wäre.</translation>
    </message>
    <message>
        <source>there is no circuit profile of this name, and none was kept that can be read.</source>
        <translation>es gibt kein Stromlaufprofil dieses Namens, und keines ist aufbewahrt, das sich lesen lässt.</translation>
    </message>
    <message>
        <source>there is no frame {0}, only {1}</source>
        <translation>es gibt keinen Rahmen {0}, nur {1}</translation>
    </message>
    <message>
        <source>there is no mark to take back.</source>
        <translation>es gibt keine Marke zum Zurücknehmen.</translation>
    </message>
    <message>
        <source>there is no meter to record.</source>
        <translation>kein Messgerät zum Aufzeichnen da.</translation>
    </message>
    <message>
        <source>there is no room</source>
        <translation>es ist kein Platz da</translation>
    </message>
    <message>
        <source>there is no such instrument.</source>
        <translation>dieses Instrument gibt es nicht.</translation>
    </message>
    <message>
        <source>there is no such job card.</source>
        <translation>diese Auftragskarte gibt es nicht.</translation>
    </message>
    <message>
        <source>there is no such limit.</source>
        <translation>diesen Grenzwert gibt es nicht.</translation>
    </message>
    <message>
        <source>there is no such meter, but something is stated of it.</source>
        <translation>dieses Messgerät gibt es nicht, aber etwas ist dazu angegeben.</translation>
    </message>
    <message>
        <source>there is no such port.</source>
        <translation>diesen Anschluss gibt es nicht.</translation>
    </message>
    <message>
        <source>there is no such role.</source>
        <translation>diese Aufgabe gibt es nicht.</translation>
    </message>
    <message>
        <source>there is no such scenario.</source>
        <translation>dieses Szenario gibt es nicht.</translation>
    </message>
    <message>
        <source>there is no such template.</source>
        <translation>diese Vorlage gibt es nicht.</translation>
    </message>
    <message>
        <source>there is no {0} &apos;{1}&apos;.</source>
        <translation>es gibt nicht: {0} „{1}“.</translation>
    </message>
    <message>
        <source>there is no {0} here</source>
        <translation>hier gibt es kein {0}</translation>
    </message>
    <message>
        <source>there is such a template already.</source>
        <translation>diese Vorlage gibt es schon.</translation>
    </message>
    <message>
        <source>there was no filter</source>
        <translation>kein Filter war eingebaut</translation>
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
        <source>they differ</source>
        <translation>sie weichen ab</translation>
    </message>
    <message>
        <source>they differ beyond the uncertainty</source>
        <translation>sie unterscheiden sich über die Unsicherheit hinaus</translation>
    </message>
    <message>
        <source>they were moved after the first tap only, and nothing happened; move them first.</source>
        <translation>sie wurden erst nach dem ersten Klopfen bewegt, und nichts geschah; zuerst bewegen.</translation>
    </message>
    <message>
        <source>this channel already plays {0}.</source>
        <translation>dieser Kanal hat schon die Aufgabe {0}.</translation>
    </message>
    <message>
        <source>this system has no known way</source>
        <translation>dieses System kennt keinen Weg dafür</translation>
    </message>
    <message>
        <source>this {0} is given to more than one meter.</source>
        <translation>mehr als ein Messgerät hat dasselbe: {0}.</translation>
    </message>
    <message>
        <source>though its command stayed</source>
        <translation>, obwohl seine Ansteuerung blieb</translation>
    </message>
    <message>
        <source>through the motor</source>
        <translation>durch den Motor</translation>
    </message>
    <message>
        <source>times by arrival: no steady pace and no clock of its own</source>
        <translation>Zeiten nach Ankunft: kein gleichmäßiger Takt und keine eigene Uhr</translation>
    </message>
    <message>
        <source>times the current without load</source>
        <translation>mal der Leerlaufstrom</translation>
    </message>
    <message>
        <source>times {0}</source>
        <translation>mal {0}</translation>
    </message>
    <message>
        <source>to {0} s</source>
        <translation>bis {0} s</translation>
    </message>
    <message>
        <source>too few good ones</source>
        <translation>zu wenig gute</translation>
    </message>
    <message>
        <source>towards the face most air flows; floor and defrost take 3 to 10 % less</source>
        <translation>zum Gesicht strömt die meiste Luft; Fußraum und Scheibe nehmen 3 bis 10 % weniger</translation>
    </message>
    <message>
        <source>turns go through a clamp, but this role is a voltage.</source>
        <translation>Windungen gehen durch eine Zange, diese Aufgabe ist aber eine Spannung.</translation>
    </message>
    <message>
        <source>turns go through a clamp, not through a {0}.</source>
        <translation>Windungen gehen nur durch eine Zange ({0} angegeben).</translation>
    </message>
    <message>
        <source>two columns would have the same name: {0}.</source>
        <translation>zwei Spalten hätten denselben Namen: {0}.</translation>
    </message>
    <message>
        <source>two instruments have the same key.</source>
        <translation>zwei Instrumente haben denselben Schlüssel.</translation>
    </message>
    <message>
        <source>two of its files would have one name inside the PDF.</source>
        <translation>zwei seiner Dateien hätten im PDF denselben Namen.</translation>
    </message>
    <message>
        <source>typed</source>
        <translation>eingetippte</translation>
    </message>
    <message>
        <source>undo of the edit of</source>
        <translation>Änderung rückgängig gemacht vom</translation>
    </message>
    <message>
        <source>voltage across the motor</source>
        <translation>Spannung am Motor</translation>
    </message>
    <message>
        <source>volts asked for</source>
        <translation>angeforderte Volt</translation>
    </message>
    <message>
        <source>volts at rest</source>
        <translation>Volt in Ruhe</translation>
    </message>
    <message>
        <source>wait: too few readings yet for a value that stands</source>
        <translation>warten: noch zu wenige Messwerte für einen ruhigen Wert</translation>
    </message>
    <message>
        <source>was marked</source>
        <translation>markiert war</translation>
    </message>
    <message>
        <source>was removed while it was being written.</source>
        <translation>wurde während des Schreibens entfernt.</translation>
    </message>
    <message>
        <source>what any known fault would give</source>
        <translation>dem, was irgendein bekannter Fehler ergäbe</translation>
    </message>
    <message>
        <source>what is not stated of the meters (usually up to {0} {1}) could make the difference</source>
        <translation>was zu den Messgeräten nicht angegeben ist (üblich bis {0} {1}), könnte den Unterschied machen</translation>
    </message>
    <message>
        <source>what is sent comes back: an echo, or a plug with two pins bridged. Check what is connected there.</source>
        <translation>was gesendet wird, kommt zurück: ein Echo, oder ein Stecker mit zwei gebrückten Stiften. Prüfen, was dort angeschlossen ist.</translation>
    </message>
    <message>
        <source>what it sent was not understood ({0})</source>
        <translation>was es sandte, wurde nicht verstanden ({0})</translation>
    </message>
    <message>
        <source>what the PDF says of the files inside</source>
        <translation>was das PDF über die Dateien darin sagt</translation>
    </message>
    <message>
        <source>what the command was before is not known</source>
        <translation>was die Ansteuerung vorher war, ist nicht bekannt</translation>
    </message>
    <message>
        <source>what was seen</source>
        <translation>dem, was zu sehen war</translation>
    </message>
    <message>
        <source>what was seen ({0}: {1})</source>
        <translation>dem, was zu sehen war ({0}: {1})</translation>
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
        <source>which is NOT the one asked for</source>
        <translation>NICHT dem verlangten</translation>
    </message>
    <message>
        <source>which is the one asked for</source>
        <translation>dem verlangten</translation>
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
        <source>who made the edit</source>
        <translation>wer die Änderung machte</translation>
    </message>
    <message>
        <source>whole feed side</source>
        <translation>ganze Plusseite</translation>
    </message>
    <message>
        <source>whole feed side, to the controller</source>
        <translation>ganze Plusseite, bis zum Regler</translation>
    </message>
    <message>
        <source>whole feed side, to the module</source>
        <translation>ganze Plusseite, bis zum Modul</translation>
    </message>
    <message>
        <source>whole feed side, to the speed switch</source>
        <translation>ganze Plusseite, bis zum Stufenschalter</translation>
    </message>
    <message>
        <source>whole ground side</source>
        <translation>ganze Masseseite</translation>
    </message>
    <message>
        <source>whole ground side, from the speed switch</source>
        <translation>ganze Masseseite, ab dem Stufenschalter</translation>
    </message>
    <message>
        <source>winding resistance</source>
        <translation>Wicklungswiderstand</translation>
    </message>
    <message>
        <source>windows make up to 5 %</source>
        <translation>Fenster machen bis zu 5 % aus</translation>
    </message>
    <message>
        <source>wire 1 from the pack to the speed switch</source>
        <translation>Leitung 1 von den Vorwiderständen zum Stufenschalter</translation>
    </message>
    <message>
        <source>wire 1 from the speed switch to the pack</source>
        <translation>Leitung 1 vom Stufenschalter zu den Vorwiderständen</translation>
    </message>
    <message>
        <source>wire 2 from the pack to the speed switch</source>
        <translation>Leitung 2 von den Vorwiderständen zum Stufenschalter</translation>
    </message>
    <message>
        <source>wire 2 from the speed switch to the pack</source>
        <translation>Leitung 2 vom Stufenschalter zu den Vorwiderständen</translation>
    </message>
    <message>
        <source>wire 3 from the pack to the speed switch</source>
        <translation>Leitung 3 von den Vorwiderständen zum Stufenschalter</translation>
    </message>
    <message>
        <source>wire 3 from the speed switch to the pack</source>
        <translation>Leitung 3 vom Stufenschalter zu den Vorwiderständen</translation>
    </message>
    <message>
        <source>wire 4 from the speed switch</source>
        <translation>Leitung 4 vom Stufenschalter</translation>
    </message>
    <message>
        <source>wire 4 from the speed switch, past the pack</source>
        <translation>Leitung 4 vom Stufenschalter, an den Vorwiderständen vorbei</translation>
    </message>
    <message>
        <source>wire 4 to the speed switch</source>
        <translation>Leitung 4 zum Stufenschalter</translation>
    </message>
    <message>
        <source>wire 4 to the speed switch, past the pack</source>
        <translation>Leitung 4 zum Stufenschalter, an den Vorwiderständen vorbei</translation>
    </message>
    <message>
        <source>wire from the coil fuse to the relay</source>
        <translation>Leitung von der Spulensicherung zum Relais</translation>
    </message>
    <message>
        <source>wire from the controller to the motor</source>
        <translation>Leitung vom Regler zum Motor</translation>
    </message>
    <message>
        <source>wire from the high relay to the control head</source>
        <translation>Leitung vom Relais höchste Stufe zum Bedienteil</translation>
    </message>
    <message>
        <source>wire from the main fuse to the relay</source>
        <translation>Leitung von der Hauptsicherung zum Relais</translation>
    </message>
    <message>
        <source>wire from the module to the motor</source>
        <translation>Leitung vom Modul zum Motor</translation>
    </message>
    <message>
        <source>wire from the motor back to the module</source>
        <translation>Leitung vom Motor zurück zum Modul</translation>
    </message>
    <message>
        <source>wire from the motor to the controller</source>
        <translation>Leitung vom Motor zum Regler</translation>
    </message>
    <message>
        <source>wire from the motor to the high relay</source>
        <translation>Leitung vom Motor zum Relais höchste Stufe</translation>
    </message>
    <message>
        <source>wire from the motor to the resistor pack</source>
        <translation>Leitung vom Motor zu den Vorwiderständen</translation>
    </message>
    <message>
        <source>wire from the relay to the controller plug</source>
        <translation>Leitung vom Relais zum Reglerstecker</translation>
    </message>
    <message>
        <source>wire from the relay to the module plug</source>
        <translation>Leitung vom Relais zum Modulstecker</translation>
    </message>
    <message>
        <source>wire from the relay to the motor plug</source>
        <translation>Leitung vom Relais zum Motorstecker</translation>
    </message>
    <message>
        <source>wire from the relay to the speed switch</source>
        <translation>Leitung vom Relais zum Stufenschalter</translation>
    </message>
    <message>
        <source>wire from the resistor pack to the motor</source>
        <translation>Leitung von den Vorwiderständen zum Motor</translation>
    </message>
    <message>
        <source>wires and ground of the high relay</source>
        <translation>Leitungen und Masse des Relais höchste Stufe</translation>
    </message>
    <message>
        <source>wires between resistor pack and speed switch</source>
        <translation>Leitungen zwischen Vorwiderständen und Stufenschalter</translation>
    </message>
    <message>
        <source>wires between speed switch and resistor pack</source>
        <translation>Leitungen zwischen Stufenschalter und Vorwiderständen</translation>
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
        <source>with {0} turns the accuracy of the {1} is stated up to {2} {3}</source>
        <translation>bei {0} Windungen ist die Genauigkeit des Aufnehmers ({1}) nur bis {2} {3} angegeben</translation>
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
        <source>worn bearing, wheel rubbing; it overloads controllers, plugs and fuses</source>
        <translation>verschlissenes Lager, schleifendes Rad; es überlastet Regler, Stecker und Sicherungen</translation>
    </message>
    <message>
        <source>worn brushes, a dead spot on the commutator</source>
        <translation>verschlissene Bürsten, eine tote Stelle am Kollektor</translation>
    </message>
    <message>
        <source>worn brushes, dirty commutator</source>
        <translation>verschlissene Bürsten, verschmutzter Kollektor</translation>
    </message>
    <message>
        <source>worn ignition switch, an ignition relay or a fuse before it</source>
        <translation>verschlissener Zündschalter, ein Zündrelais oder eine Sicherung davor</translation>
    </message>
    <message>
        <source>would be empty: nothing on this card fits another job.</source>
        <translation>wäre leer: nichts auf dieser Karte passt zu einem anderen Auftrag.</translation>
    </message>
    <message>
        <source>would pass the command at {0} s.</source>
        <translation>würde an der Schaltung bei {0} s vorbeigehen.</translation>
    </message>
    <message>
        <source>you may not open it.</source>
        <translation>keine Rechte, es zu öffnen.</translation>
    </message>
    <message>
        <source>you may not open it. {0}</source>
        <translation>keine Rechte, ihn zu öffnen. {0}</translation>
    </message>
    <message>
        <source>you may not open this instrument.</source>
        <translation>keine Rechte, dieses Instrument zu öffnen.</translation>
    </message>
    <message>
        <source>you may not open this port.</source>
        <translation>keine Rechte, diesen Anschluss zu öffnen.</translation>
    </message>
    <message>
        <source>{0} % of the {1} or more; {2} % is asked for.</source>
        <translation>{0} % von {1} oder mehr; verlangt sind {2} %.</translation>
    </message>
    <message>
        <source>{0} (process {1})</source>
        <translation>{0} (Prozess {1})</translation>
    </message>
    <message>
        <source>{0} (typed by hand: {1}).</source>
        <translation>{0} (von Hand eingetippt: {1}).</translation>
    </message>
    <message>
        <source>{0} ({1} s to {2} s)</source>
        <translation>{0} ({1} s bis {2} s)</translation>
    </message>
    <message>
        <source>{0} -m pip install {1}</source>
        <translation>{0} -m pip install {1}</translation>
    </message>
    <message>
        <source>{0} A (uncertainty not known)</source>
        <translation>{0} A (Unsicherheit nicht bekannt)</translation>
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
        <source>{0} It could not go on elsewhere either ({1}).</source>
        <translation>{0} Sie konnte auch anderswo nicht weitergehen ({1}).</translation>
    </message>
    <message>
        <source>{0} It was so when the recording was sealed.</source>
        <translation>{0} So war es, als die Aufzeichnung versiegelt wurde.</translation>
    </message>
    <message>
        <source>{0} NOT APPLIED, it does not fit: {1}</source>
        <translation>{0} NICHT ANGEWANDT, sie passt nicht: {1}</translation>
    </message>
    <message>
        <source>{0} NOT WHOLE from there on: {1}</source>
        <translation>{0} ab dort NICHT VOLLSTÄNDIG: {1}</translation>
    </message>
    <message>
        <source>{0} Not applied: judged by other limits.</source>
        <translation>{0} Nicht angewandt: nach anderen Grenzwerten beurteilt.</translation>
    </message>
    <message>
        <source>{0} Not applied: taken as recorded.</source>
        <translation>{0} Nicht angewandt: wie aufgezeichnet genommen.</translation>
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
        <source>{0} The recording goes on in {1}.</source>
        <translation>{0} Die Aufzeichnung geht in {1} weiter.</translation>
    </message>
    <message>
        <source>{0} V stood behind the relay: the wire or plug from there to the motor is open</source>
        <translation>{0} V lagen hinter dem Relais an: Leitung oder Stecker von dort zum Motor ist offen</translation>
    </message>
    <message>
        <source>{0} V to {1} V</source>
        <translation>{0} V bis {1} V</translation>
    </message>
    <message>
        <source>{0} about entries that are left out here, such as the VIN, can&apos;t be told.</source>
        <translation>{0} an Angaben, die hier weggelassen sind, wie der FIN, lassen sich nicht nennen.</translation>
    </message>
    <message>
        <source>{0} against {1} taken as good.{2}</source>
        <translation>{0} gegen {1} als gut genommene.{2}</translation>
    </message>
    <message>
        <source>{0} and {1}</source>
        <translation>{0} und {1}</translation>
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
        <source>{0} asks for nothing</source>
        <translation>{0}: fordert nichts an</translation>
    </message>
    <message>
        <source>{0} asks for the same all the time</source>
        <translation>{0}: fordert immer dasselbe an</translation>
    </message>
    <message>
        <source>{0} at speed {1}</source>
        <translation>{0} auf Stufe {1}</translation>
    </message>
    <message>
        <source>{0} at {1} V across the motor</source>
        <translation>{0} bei {1} V am Motor</translation>
    </message>
    <message>
        <source>{0} at {1} s</source>
        <translation>{0} bei {1} s</translation>
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
        <source>{0} byte(s) damaged on the line (framing or parity)</source>
        <translation>{0} Byte(s) auf der Leitung beschädigt (Rahmen oder Parität)</translation>
    </message>
    <message>
        <source>{0} byte(s) lost: they came faster than they were fetched</source>
        <translation>{0} Byte(s) verloren: sie kamen schneller, als sie abgeholt wurden</translation>
    </message>
    <message>
        <source>{0} can be told from the motor.</source>
        <translation>{0} lässt sich vom Motor unterscheiden.</translation>
    </message>
    <message>
        <source>{0} days</source>
        <translation>{0} Tage</translation>
    </message>
    <message>
        <source>{0} dead segment{1} seen in this recording say{2} the same.</source>
        <translation>{0} tote Stelle(n), in dieser Aufzeichnung gesehen, sagen dasselbe.</translation>
    </message>
    <message>
        <source>{0} does not close</source>
        <translation>{0}: schließt nicht</translation>
    </message>
    <message>
        <source>{0} does not conduct</source>
        <translation>{0}: leitet nicht</translation>
    </message>
    <message>
        <source>{0} does not go with {1}: without it {2} would be expected there.</source>
        <translation>{0} passt nicht zu {1}: ohne sie wäre dort {2} zu erwarten.</translation>
    </message>
    <message>
        <source>{0} does not match its checksum; it and what follows is left out.</source>
        <translation>{0} passt nicht zu seiner Prüfsumme; er und was folgt wird ausgelassen.</translation>
    </message>
    <message>
        <source>{0} doubts</source>
        <translation>{0} Zweifel</translation>
    </message>
    <message>
        <source>{0} drags</source>
        <translation>{0}: schwergängig</translation>
    </message>
    <message>
        <source>{0} dropout(s) of the current shorter than {1} s (min_dwell_s), {2} s together, are not spans of their own: lower min_dwell_s to see them.</source>
        <translation>{0} Aussetzer des Stroms, kürzer als {1} s (min_dwell_s), zusammen {2} s, sind keine eigenen Abschnitte: min_dwell_s senken, um sie zu sehen.</translation>
    </message>
    <message>
        <source>{0} dropouts after runs of about {1} s, with pauses of about {2} s, not upon taps; that no run is short would happen by chance with {3}</source>
        <translation>{0} Aussetzer nach Laufzeiten von etwa {1} s, mit Pausen von etwa {2} s, nicht auf Klopfen; dass keine Laufzeit kurz ist, käme zufällig mit {3} vor</translation>
    </message>
    <message>
        <source>{0} dropouts without a rhythm: times thrown at random would be as even with a chance of {1}.</source>
        <translation>{0} Aussetzer ohne Rhythmus: zufällige Zeiten wären mit einer Wahrscheinlichkeit von {1} ebenso gleichmäßig.</translation>
    </message>
    <message>
        <source>{0} dropouts, one every {1} s (standard deviation {2} s); at random they would be as even with a chance of {3}</source>
        <translation>{0} Aussetzer, einer alle {1} s (Standardabweichung {2} s); zufällig wären sie mit einer Wahrscheinlichkeit von {3} ebenso gleichmäßig</translation>
    </message>
    <message>
        <source>{0} edits</source>
        <translation>{0} Änderungen</translation>
    </message>
    <message>
        <source>{0} files</source>
        <translation>{0} Dateien</translation>
    </message>
    <message>
        <source>{0} flat</source>
        <translation>{0}: leer</translation>
    </message>
    <message>
        <source>{0} for {1} s together ({2}): what the motor did then is not known.</source>
        <translation>{0} zusammen {1} s lang ({2}): was der Motor da tat, ist nicht bekannt.</translation>
    </message>
    <message>
        <source>{0} from {1} s to {2} s</source>
        <translation>{0} von {1} s bis {2} s</translation>
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
        <source>{0} gives nothing</source>
        <translation>{0}: gibt nichts ab</translation>
    </message>
    <message>
        <source>{0} has an impossible length; it and what follows is left out.</source>
        <translation>{0} hat eine unmögliche Länge; er und was folgt wird ausgelassen.</translation>
    </message>
    <message>
        <source>{0} have the same serial number</source>
        <translation>{0} haben dieselbe Seriennummer</translation>
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
        <source>{0} holds the character {1}, which is no text.</source>
        <translation>{0} enthält das Zeichen {1}, das kein Text ist.</translation>
    </message>
    <message>
        <source>{0} is a link or a device</source>
        <translation>{0} ist ein Verweis oder ein Gerät</translation>
    </message>
    <message>
        <source>{0} is above max_a {1}</source>
        <translation>{0} liegt über max_a {1}</translation>
    </message>
    <message>
        <source>{0} is encrypted</source>
        <translation>{0} ist verschlüsselt</translation>
    </message>
    <message>
        <source>{0} is given twice.</source>
        <translation>{0} ist zweimal angegeben.</translation>
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
        <source>{0} is marked</source>
        <translation>{0} ist markiert</translation>
    </message>
    <message>
        <source>{0} is not typed by hand: its readings come from a port.</source>
        <translation>{0} wird nicht von Hand getippt: seine Messwerte kommen von einem Anschluss.</translation>
    </message>
    <message>
        <source>{0} is of its kind, but has no serial number to know it by</source>
        <translation>{0} ist von seiner Art, hat aber keine Seriennummer, an der es zu erkennen wäre</translation>
    </message>
    <message>
        <source>{0} is packed by another method than a pack is</source>
        <translation>{0} ist anders gepackt, als ein Paket es ist</translation>
    </message>
    <message>
        <source>{0} is simulated and {1} is {2}: a simulated fan says nothing of a real one. Compare two of one kind.</source>
        <translation>{0} ist simuliert und {1} ist {2}: ein simuliertes Gebläse sagt nichts über ein wirkliches. Zwei der gleichen Art vergleichen.</translation>
    </message>
    <message>
        <source>{0} is told in {1}, also behind its sensor.</source>
        <translation>{0} wird in {1} angegeben, auch hinter dem Aufnehmer.</translation>
    </message>
    <message>
        <source>{0} is torn off.</source>
        <translation>{0} ist abgerissen.</translation>
    </message>
    <message>
        <source>{0} is typed by hand and has no port.</source>
        <translation>{0} wird von Hand getippt und hat keinen Anschluss.</translation>
    </message>
    <message>
        <source>{0} is withdrawn</source>
        <translation>{0} ist zurückgenommen</translation>
    </message>
    <message>
        <source>{0} is {1}, not a list of texts.</source>
        <translation>{0} ist {1}, keine Liste von Texten.</translation>
    </message>
    <message>
        <source>{0} is {1}, not a text.</source>
        <translation>{0} ist {1}, kein Text.</translation>
    </message>
    <message>
        <source>{0} is {1}, not an object.</source>
        <translation>{0} ist {1}, kein Objekt.</translation>
    </message>
    <message>
        <source>{0} is {1}, not measured by this program.</source>
        <translation>{0} ist {1}, nicht von diesem Programm gemessen.</translation>
    </message>
    <message>
        <source>{0} left out: {1}.</source>
        <translation>{0} ausgelassen: {1}.</translation>
    </message>
    <message>
        <source>{0} lies in a file</source>
        <translation>{0} liegt in einer Datei</translation>
    </message>
    <message>
        <source>{0} lies upon another entry</source>
        <translation>{0} liegt auf einem anderen Eintrag</translation>
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
        <source>{0} more reading(s) left the base line and were not looked into.</source>
        <translation>{0} weitere Messwert(e) verließen die Grundlinie und wurden nicht untersucht.</translation>
    </message>
    <message>
        <source>{0} more short dropouts are inferred{1}; the first: {2}</source>
        <translation>Auf {0} weitere kurze Aussetzer wird geschlossen{1}; der erste: {2}</translation>
    </message>
    <message>
        <source>{0} more stretches</source>
        <translation>{0} weitere Strecken</translation>
    </message>
    <message>
        <source>{0} motors</source>
        <translation>{0} Motoren</translation>
    </message>
    <message>
        <source>{0} names {1}, which is no folder: profiles of your own are not used.</source>
        <translation>{0} nennt {1}, was kein Ordner ist: eigene Profile werden nicht benutzt.</translation>
    </message>
    <message>
        <source>{0} needs a {1}, but this channel reads a {2}.</source>
        <translation>Messgröße passt nicht: {0} braucht {1}, dieser Kanal liest {2}.</translation>
    </message>
    <message>
        <source>{0} no. {1}</source>
        <translation>{0} Nr. {1}</translation>
    </message>
    <message>
        <source>{0} numbers are not one for each channel.</source>
        <translation>{0} Zahlen sind nicht eine je Kanal.</translation>
    </message>
    <message>
        <source>{0} of at least {1} different motor voltages with steady, sound running; run it at more speeds</source>
        <translation>{0} von mindestens {1} verschiedenen Motorspannungen mit ruhigem, einwandfreiem Lauf; auf mehr Stufen laufen lassen</translation>
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
        <source>{0} open</source>
        <translation>{0}: unterbrochen</translation>
    </message>
    <message>
        <source>{0} or a shorted turn: current up by {1} at each passage</source>
        <translation>{0} oder einem Windungsschluss: Strom bei jedem Durchgang um {1} höher</translation>
    </message>
    <message>
        <source>{0} other files</source>
        <translation>{0} andere Dateien</translation>
    </message>
    <message>
        <source>{0} out</source>
        <translation>{0} gezogen</translation>
    </message>
    <message>
        <source>{0} part: {1}{2}.</source>
        <translation>{0} Teil: {1}{2}.</translation>
    </message>
    <message>
        <source>{0} reading(s) left the base line in a way that no short open explains.</source>
        <translation>{0} Messwert(e) verließen die Grundlinie so, wie es keine kurze Unterbrechung erklärt.</translation>
    </message>
    <message>
        <source>{0} reading(s) left the base line no further than the noise of this meter does at times, which has many outliers; nothing is inferred of them.</source>
        <translation>{0} Messwert(e) verließen die Grundlinie nicht weiter, als das Rauschen dieses Messgeräts es manchmal tut, das viele Ausreißer hat; daraus wird nichts gefolgert.</translation>
    </message>
    <message>
        <source>{0} reading(s) of {1} bear a time before that of a reading that came earlier; they count as read at that one&apos;s time: is the file damaged, or were clocks set?</source>
        <translation>{0} Messwert(e) von {1} tragen eine Zeit vor der eines früher gekommenen; sie gelten als zu dessen Zeit gelesen: ist die Datei beschädigt, oder wurden Uhren gestellt?</translation>
    </message>
    <message>
        <source>{0} reading(s) of {1} {2} lie beyond a thousand million volts or amperes and count as missing: is its scale right, or the file damaged?</source>
        <translation>{0} Messwert(e) von {1} {2} liegen jenseits von tausend Millionen Volt oder Ampere und gelten als fehlend: stimmt die Skalierung, oder ist die Datei beschädigt?</translation>
    </message>
    <message>
        <source>{0} readings a bar are too few to tell bars apart; it takes</source>
        <translation>{0} Messwerte je Lamelle sind zu wenig, um Lamellen zu unterscheiden; nötig sind</translation>
    </message>
    <message>
        <source>{0} readings came late, and have the times they were taken at; {1}</source>
        <translation>{0} Messwerte kamen spät und haben die Zeiten, zu denen sie genommen wurden; {1}</translation>
    </message>
    <message>
        <source>{0} readings in {1} s, {2} are needed. Is the meter on, and sending?</source>
        <translation>{0} Messwerte in {1} s, {2} sind nötig. Ist das Messgerät an, und sendet es?</translation>
    </message>
    <message>
        <source>{0} ripples a turn, hence {1}</source>
        <translation>{0} Wellen je Umdrehung, also {1}</translation>
    </message>
    <message>
        <source>{0} rows of {1} are in none of them</source>
        <translation>{0} Zeilen von {1} sind in keinem davon</translation>
    </message>
    <message>
        <source>{0} rows were</source>
        <translation>{0} Zeilen wurden</translation>
    </message>
    <message>
        <source>{0} s at {1} % or above{2}</source>
        <translation>{0} s bei {1} % oder darüber{2}</translation>
    </message>
    <message>
        <source>{0} s before the current</source>
        <translation>{0} s vor dem Strom</translation>
    </message>
    <message>
        <source>{0} says {1}</source>
        <translation>{0} meldet {1}</translation>
    </message>
    <message>
        <source>{0} seized</source>
        <translation>{0}: sitzt fest</translation>
    </message>
    <message>
        <source>{0} short change(s) of the current came with the feed moving the same way: the supply side (battery, fuse, relay, connector), not the motor.</source>
        <translation>{0} kurze Änderung(en) des Stroms kamen, als sich das Plus in dieselbe Richtung bewegte: die Versorgungsseite (Batterie, Sicherung, Relais, Stecker), nicht der Motor.</translation>
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
        <source>{0} shorted</source>
        <translation>{0}: kurzgeschlossen</translation>
    </message>
    <message>
        <source>{0} such instruments are plugged in.</source>
        <translation>{0} solche Instrumente sind angesteckt.</translation>
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
        <source>{0} times, first {1}</source>
        <translation>{0}-mal, zuerst {1}</translation>
    </message>
    <message>
        <source>{0} times, {1} s together,</source>
        <translation>{0}-mal, zusammen {1} s,</translation>
    </message>
    <message>
        <source>{0} to motor feed{1}</source>
        <translation>{0} bis Plus des Motors{1}</translation>
    </message>
    <message>
        <source>{0} to {1}</source>
        <translation>{0} bis {1}</translation>
    </message>
    <message>
        <source>{0} to {1} A</source>
        <translation>{0} bis {1} A</translation>
    </message>
    <message>
        <source>{0} to {1} ms</source>
        <translation>{0} bis {1} ms</translation>
    </message>
    <message>
        <source>{0} to {1} s</source>
        <translation>{0} bis {1} s</translation>
    </message>
    <message>
        <source>{0} to {1} {2}</source>
        <translation>{0} bis {1} {2}</translation>
    </message>
    <message>
        <source>{0} turns</source>
        <translation>{0} Windungen</translation>
    </message>
    <message>
        <source>{0} turns are too few to tell bars apart; it takes {1}</source>
        <translation>{0} Umdrehungen sind zu wenig, um Lamellen zu unterscheiden; nötig sind {1}</translation>
    </message>
    <message>
        <source>{0} was recorded for {1} V and {2} for {3} V nominal: these are different motors. Record both with limits of the same nominal voltage.</source>
        <translation>{0} wurde für {1} V aufgezeichnet und {2} für {3} V Nennspannung: das sind verschiedene Motoren. Beide mit Grenzen derselben Nennspannung aufzeichnen.</translation>
    </message>
    <message>
        <source>{0} was withdrawn by hand at {1} and counts for nothing; it is kept.</source>
        <translation>{0} wurde um {1} von Hand zurückgenommen und zählt nicht; sie bleibt aufbewahrt.</translation>
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
        <source>{0} welded</source>
        <translation>{0}: verschweißt</translation>
    </message>
    <message>
        <source>{0} {1} bars (bars {2}, counted from the deepest notch)</source>
        <translation>{0} {1} Lamellen (Lamellen {2}, gezählt ab der tiefsten Kerbe)</translation>
    </message>
    <message>
        <source>{0} {1} bytes stand in it.</source>
        <translation>{0} {1} Bytes stehen darin.</translation>
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
        <source>{0} {1} it does after {2}{3})</source>
        <translation>{0} {1} tut es das nach {2}{3})</translation>
    </message>
    <message>
        <source>{0} {1} readings/s</source>
        <translation>{0} {1} Messwerte/s</translation>
    </message>
    <message>
        <source>{0} {1} shown, {2} {3}</source>
        <translation>{0} {1} angezeigt, {2} {3}</translation>
    </message>
    <message>
        <source>{0} {1}{2} never came: missing in their place</source>
        <translation>{0} {1}{2} kamen nie: an ihrer Stelle fehlend</translation>
    </message>
    <message>
        <source>{0} ± {1} turns a minute</source>
        <translation>{0} ± {1} Umdrehungen je Minute</translation>
    </message>
    <message>
        <source>{0} ± {1}, calculated</source>
        <translation>{0} ± {1}, gerechnet</translation>
    </message>
    <message>
        <source>{0}, and the motor voltage was not read; measure both with the engine the same</source>
        <translation>{0}, und die Motorspannung wurde nicht gelesen; beide mit gleichem Zustand des Fahrzeugmotors messen</translation>
    </message>
    <message>
        <source>{0}, as {1}.</source>
        <translation>{0}, da {1}.</translation>
    </message>
    <message>
        <source>{0}, battery &apos;{1}&apos; would give {2} A: a short circuit.</source>
        <translation>{0}, gäbe die Batterie „{1}“ {2} A: ein Kurzschluss.</translation>
    </message>
    <message>
        <source>{0}, brought to {1} V</source>
        <translation>{0}, umgerechnet auf {1} V</translation>
    </message>
    <message>
        <source>{0}, date code</source>
        <translation>{0}, Datumscode</translation>
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
        <source>{0}, name</source>
        <translation>{0}, Bezeichnung</translation>
    </message>
    <message>
        <source>{0}, only {1}</source>
        <translation>{0}, nur {1}</translation>
    </message>
    <message>
        <source>{0}, only {1} without a line end</source>
        <translation>{0}, nur {1} ohne Zeilenende</translation>
    </message>
    <message>
        <source>{0}, open</source>
        <translation>{0}, offen</translation>
    </message>
    <message>
        <source>{0}, out of reach</source>
        <translation>{0}, unzugänglich</translation>
    </message>
    <message>
        <source>{0}, part number</source>
        <translation>{0}, Teilenummer</translation>
    </message>
    <message>
        <source>{0}, serial number</source>
        <translation>{0}, Seriennummer</translation>
    </message>
    <message>
        <source>{0}, which had no peak</source>
        <translation>{0}, der keine Spitze hatte</translation>
    </message>
    <message>
        <source>{0}, which is not towards off</source>
        <translation>{0}, was nicht Richtung Aus ist</translation>
    </message>
    <message>
        <source>{0}, which is your own on this machine.</source>
        <translation>{0}, dem eigenen auf diesem Rechner.</translation>
    </message>
    <message>
        <source>{0}, while speed {1} was commanded</source>
        <translation>{0}, während Stufe {1} geschaltet war</translation>
    </message>
    <message>
        <source>{0}, with {1}.</source>
        <translation>{0}, mit {1}.</translation>
    </message>
    <message>
        <source>{0}, {1}: {2}. Reason: {3}.</source>
        <translation>{0}, {1}: {2}. Grund: {3}.</translation>
    </message>
    <message>
        <source>{0}. But the voltage stood across the motor meanwhile: a controller that tries again would have taken it away.</source>
        <translation>{0}. Aber die Spannung lag dabei am Motor an: ein Regler, der es wieder versucht, hätte sie weggenommen.</translation>
    </message>
    <message>
        <source>{0}. Compare it with the one its maker gave you by another way.</source>
        <translation>{0}. Mit dem vergleichen, den der Ersteller auf anderem Weg mitgeteilt hat.</translation>
    </message>
    <message>
        <source>{0}. Outside North America it need not have one: compare it with the vehicle.</source>
        <translation>{0}. Außerhalb Nordamerikas muss sie keine haben: mit dem Fahrzeug vergleichen.</translation>
    </message>
    <message>
        <source>{0}. The controller pulses, so that the fuse carries less than the motor: can&apos;t tell; the current through the fuse itself would settle it.</source>
        <translation>{0}. Der Regler taktet, sodass die Sicherung weniger führt als der Motor: nicht zu sagen; der Strom durch die Sicherung selbst würde es klären.</translation>
    </message>
    <message>
        <source>{0}. The voltage stood across the motor meanwhile, which a cut-out in the controller would have taken away; a thermal switch inside the motor looks like this.</source>
        <translation>{0}. Die Spannung lag dabei am Motor an, eine Abschaltung im Regler hätte sie weggenommen; ein Thermoschalter im Motor sieht so aus.</translation>
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
        <source>{0}: a character is probably mistyped. Compare it with the vehicle.</source>
        <translation>{0}: ein Zeichen ist wohl vertippt. Mit dem Fahrzeug vergleichen.</translation>
    </message>
    <message>
        <source>{0}: a voltage drop tells about a connection only while current flows; the fan was not running.</source>
        <translation>{0}: ein Spannungsfall sagt nur bei fließendem Strom etwas über eine Verbindung; das Gebläse lief nicht.</translation>
    </message>
    <message>
        <source>{0}: batch {1} at byte {2}, rows from {3} on, does not match its checksum; those rows are left out.</source>
        <translation>{0}: Block {1} bei Byte {2}, Zeilen ab {3}, passt nicht zu seiner Prüfsumme; diese Zeilen werden ausgelassen.</translation>
    </message>
    <message>
        <source>{0}: batch {1} at byte {2}, rows from {3} on, {4}; what follows is left out.</source>
        <translation>{0}: Block {1} bei Byte {2}, Zeilen ab {3}, {4}; was folgt, wird ausgelassen.</translation>
    </message>
    <message>
        <source>{0}: batch {1}, rows {2} to {3} are damaged or missing and are left out.</source>
        <translation>{0}: Block {1}, Zeilen {2} bis {3} sind beschädigt oder fehlen und werden ausgelassen.</translation>
    </message>
    <message>
        <source>{0}: batch {1}, rows {2} to {3}, does not match its checksum; those rows are left out.</source>
        <translation>{0}: Block {1}, Zeilen {2} bis {3}, passt nicht zu seiner Prüfsumme; diese Zeilen werden ausgelassen.</translation>
    </message>
    <message>
        <source>{0}: calibration due {1}.</source>
        <translation>{0}: Kalibrierung fällig am {1}.</translation>
    </message>
    <message>
        <source>{0}: calibration was due {1}, {2} before it measured: overdue.</source>
        <translation>{0}: Kalibrierung war am {1} fällig, {2} vor der Messung: überfällig.</translation>
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
        <source>{0}: consistent with a controller that cuts out and tries again. {1}</source>
        <translation>{0}: passend zu einem Regler, der abschaltet und es wieder versucht. {1}</translation>
    </message>
    <message>
        <source>{0}: consistent with a thermal cut-out that opens when hot. {1}</source>
        <translation>{0}: passend zu einem Thermoschalter, der heiß öffnet. {1}</translation>
    </message>
    <message>
        <source>{0}: consistent with drag (bearing, wheel)</source>
        <translation>{0}: passend zu Schwergang (Lager, Rad)</translation>
    </message>
    <message>
        <source>{0}: consistent with {1} bars ({2}{3})</source>
        <translation>{0}: passend zu {1} Lamellen ({2}{3})</translation>
    </message>
    <message>
        <source>{0}: current down by {1} at each passage</source>
        <translation>{0}: Strom bei jedem Durchgang um {1} niedriger</translation>
    </message>
    <message>
        <source>{0}: dead spot or worn brushes</source>
        <translation>{0}: tote Stelle oder verschlissene Bürsten</translation>
    </message>
    <message>
        <source>{0}: differs from what was packed (SHA-256 in {1})</source>
        <translation>{0}: weicht ab von dem, was gepackt wurde (SHA-256 in {1})</translation>
    </message>
    <message>
        <source>{0}: differs from what was sealed (SHA-256 in {1}).</source>
        <translation>{0}: weicht ab von dem, was versiegelt wurde (SHA-256 in {1}).</translation>
    </message>
    <message>
        <source>{0}: does not fit {1}.</source>
        <translation>{0}: passt nicht zu {1}.</translation>
    </message>
    <message>
        <source>{0}: does not list {1}.</source>
        <translation>{0}: führt {1} nicht auf.</translation>
    </message>
    <message>
        <source>{0}: does not match its checksum; job, channels or limits may be wrong.</source>
        <translation>{0}: passt nicht zu seiner Prüfsumme; Auftrag, Kanäle oder Grenzwerte können falsch sein.</translation>
    </message>
    <message>
        <source>{0}: does not state the payload&apos;s size.</source>
        <translation>{0}: nennt die Größe des Inhalts nicht.</translation>
    </message>
    <message>
        <source>{0}: exception {1}, {2}</source>
        <translation>{0}: Ausnahme {1}, {2}</translation>
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
        <source>{0}: gain</source>
        <translation>{0}: Verstärkung</translation>
    </message>
    <message>
        <source>{0}: has a comment in the zip, which no list covers.</source>
        <translation>{0}: hat im Zip einen Kommentar, den keine Liste erfasst.</translation>
    </message>
    <message>
        <source>{0}: has a second name in the zip, which other programs may take.</source>
        <translation>{0}: hat im Zip einen zweiten Namen, den andere Programme nehmen können.</translation>
    </message>
    <message>
        <source>{0}: holds characters that can&apos;t be seen and steer how others are read; in the pack each stands as \u and its number: {1}</source>
        <translation>{0}: enthält Zeichen, die nicht zu sehen sind und steuern, wie andere gelesen werden; im Paket steht jedes als \u und seine Nummer: {1}</translation>
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
        <source>{0}: is damaged in the zip ({1}).</source>
        <translation>{0}: ist im Zip beschädigt ({1}).</translation>
    </message>
    <message>
        <source>{0}: is listed nowhere; it was added later.</source>
        <translation>{0}: ist nirgends aufgeführt; sie kam später hinzu.</translation>
    </message>
    <message>
        <source>{0}: is missing.</source>
        <translation>{0}: fehlt.</translation>
    </message>
    <message>
        <source>{0}: is missing; nobody signed, {1} did not either.</source>
        <translation>{0}: fehlt; niemand hat unterschrieben, auch {1} nicht.</translation>
    </message>
    <message>
        <source>{0}: is missing; the recording is not sealed.</source>
        <translation>{0}: fehlt; die Aufzeichnung ist nicht versiegelt.</translation>
    </message>
    <message>
        <source>{0}: is missing; {1} lists it.</source>
        <translation>{0}: fehlt; {1} führt sie auf.</translation>
    </message>
    <message>
        <source>{0}: is missing; {1} says that {2} signed.</source>
        <translation>{0}: fehlt; {1} sagt, dass {2} unterschrieben hat.</translation>
    </message>
    <message>
        <source>{0}: is no plain file; it was not read.</source>
        <translation>{0}: ist keine einfache Datei; sie wurde nicht gelesen.</translation>
    </message>
    <message>
        <source>{0}: is not as a pack holds it.</source>
        <translation>{0}: ist nicht so, wie ein Paket sie enthält.</translation>
    </message>
    <message>
        <source>{0}: is not as a seal writes it.</source>
        <translation>{0}: ist nicht so, wie ein Siegel es schreibt.</translation>
    </message>
    <message>
        <source>{0}: is not as it was made (SHA-256 in {1}).</source>
        <translation>{0}: ist nicht wie gemacht (SHA-256 in {1}).</translation>
    </message>
    <message>
        <source>{0}: is not in the seal, which covers files: it is a pipe, a device or a link that leads to no file.</source>
        <translation>{0}: ist nicht im Siegel, das nur Dateien erfasst: Es ist eine Pipe, ein Gerät oder eine Verknüpfung, die zu keiner Datei führt.</translation>
    </message>
    <message>
        <source>{0}: is not listed in the seal; it was added later.</source>
        <translation>{0}: ist im Siegel nicht aufgeführt; sie kam später hinzu.</translation>
    </message>
    <message>
        <source>{0}: is torn off before the first reading.</source>
        <translation>{0}: ist vor dem ersten Messwert abgerissen.</translation>
    </message>
    <message>
        <source>{0}: it changed its measuring range and showed 0 meanwhile</source>
        <translation>{0}: es wechselte den Messbereich und zeigte dabei 0</translation>
    </message>
    <message>
        <source>{0}: it is {1} now</source>
        <translation>{0}: es ist jetzt {1}</translation>
    </message>
    <message>
        <source>{0}: its calibration is stated as due {1}, which is no date.</source>
        <translation>{0}: die Kalibrierung ist als fällig am {1} angegeben, was kein Datum ist.</translation>
    </message>
    <message>
        <source>{0}: its end is missing.</source>
        <translation>{0}: das Ende fehlt.</translation>
    </message>
    <message>
        <source>{0}: its last lines are missing: the readings were closed in good order, and no end is written.</source>
        <translation>{0}: die letzten Zeilen fehlen: die Messwerte wurden ordentlich abgeschlossen, und kein Ende steht da.</translation>
    </message>
    <message>
        <source>{0}: left out for want of a counterpart: speed {1}.</source>
        <translation>{0}: ausgelassen, weil das Gegenstück fehlt: Stufe {1}.</translation>
    </message>
    <message>
        <source>{0}: lies beside the pack.</source>
        <translation>{0}: liegt neben dem Paket.</translation>
    </message>
    <message>
        <source>{0}: line {1} holds no link of the chain: it was put in.</source>
        <translation>{0}: Zeile {1} hat kein Glied der Kette: sie wurde eingefügt.</translation>
    </message>
    <message>
        <source>{0}: line {1} is damaged and left out.</source>
        <translation>{0}: Zeile {1} ist beschädigt und wird ausgelassen.</translation>
    </message>
    <message>
        <source>{0}: line {1} is damaged.</source>
        <translation>{0}: Zeile {1} ist beschädigt.</translation>
    </message>
    <message>
        <source>{0}: line {1} is torn off and left out.</source>
        <translation>{0}: Zeile {1} ist abgerissen und wird ausgelassen.</translation>
    </message>
    <message>
        <source>{0}: line {1} {2}</source>
        <translation>{0}: Zeile {1} {2}</translation>
    </message>
    <message>
        <source>{0}: lists {1}, which is not in {2}.</source>
        <translation>{0}: führt {1} auf, was nicht in {2} ist.</translation>
    </message>
    <message>
        <source>{0}: lists {1}, which it can&apos;t.</source>
        <translation>{0}: führt {1} auf, was sie nicht kann.</translation>
    </message>
    <message>
        <source>{0}: meter</source>
        <translation>{0}: Messgerät</translation>
    </message>
    <message>
        <source>{0}: names {1}, but {2} signed.</source>
        <translation>{0}: nennt {1}, unterschrieben hat aber {2}.</translation>
    </message>
    <message>
        <source>{0}: no channel read the motor current; there is nothing to compare.</source>
        <translation>{0}: kein Kanal las den Motorstrom; es gibt nichts zu vergleichen.</translation>
    </message>
    <message>
        <source>{0}: no one can reach the point</source>
        <translation>{0}: niemand kommt an den Punkt</translation>
    </message>
    <message>
        <source>{0}: no reading for {1} s</source>
        <translation>{0}: seit {1} s kein Messwert</translation>
    </message>
    <message>
        <source>{0}: no reading was typed for this time</source>
        <translation>{0}: für diese Zeit wurde kein Messwert eingetippt</translation>
    </message>
    <message>
        <source>{0}: simulated, so it has no calibration.</source>
        <translation>{0}: simuliert, hat also keine Kalibrierung.</translation>
    </message>
    <message>
        <source>{0}: states {1} (bytes.files) for the payload, but there are {2}.</source>
        <translation>{0}: nennt {1} (Bytes.Dateien) für den Inhalt, es sind aber {2}.</translation>
    </message>
    <message>
        <source>{0}: states {1} bytes in {2} files, but there are {3} bytes in {4} files.</source>
        <translation>{0}: nennt {1} Bytes in {2} Dateien, es sind aber {3} Bytes in {4} Dateien.</translation>
    </message>
    <message>
        <source>{0}: the batch at byte {1} repeats rows before {2} and is left out.</source>
        <translation>{0}: der Block bei Byte {1} wiederholt Zeilen vor {2} und wird ausgelassen.</translation>
    </message>
    <message>
        <source>{0}: the column names do not match the channels in about.json.</source>
        <translation>{0}: die Spaltennamen passen nicht zu den Kanälen in about.json.</translation>
    </message>
    <message>
        <source>{0}: the controller turns {1}{2} into heat ({3} V over it, {4}); allowed up to {5} W: {6}{7}.</source>
        <translation>{0}: der Regler setzt {1}{2} in Wärme um ({3} V an ihm, {4}); erlaubt bis {5} W: {6}{7}.</translation>
    </message>
    <message>
        <source>{0}: the frame at byte {1}</source>
        <translation>{0}: der Rahmen bei Byte {1}</translation>
    </message>
    <message>
        <source>{0}: the line speed is probably not {1}; set baud in the profile or on the meter; `meterlog ports --ask` with this port tries other profiles</source>
        <translation>{0}: die Übertragungsrate ist wohl nicht {1}; baud im Profil oder am Messgerät einstellen; `meterlog ports --ask` mit diesem Anschluss probiert andere Profile</translation>
    </message>
    <message>
        <source>{0}: the line speed is probably not {1}; set baud in the profile or on the meter; to ask this port on the Meters page tries the other kinds of meter</source>
        <translation>{0}: die Übertragungsrate ist wohl nicht {1}; baud im Profil oder am Messgerät einstellen; diesen Anschluss auf der Seite Messgeräte fragen probiert die anderen Arten von Messgeräten</translation>
    </message>
    <message>
        <source>{0}: too much resistance</source>
        <translation>{0}: zu viel Widerstand</translation>
    </message>
    <message>
        <source>{0}: was added later.</source>
        <translation>{0}: kam später hinzu.</translation>
    </message>
    <message>
        <source>{0}: was made by the key {1}, not by {2}.</source>
        <translation>{0}: wurde mit dem Schlüssel {1} gemacht, nicht mit {2}.</translation>
    </message>
    <message>
        <source>{0}: was recorded before its lines were chained; only the seal tells whether one was changed.</source>
        <translation>{0}: wurde aufgezeichnet, bevor die Zeilen verkettet wurden; nur das Siegel sagt, ob eine geändert wurde.</translation>
    </message>
    <message>
        <source>{0}: when its calibration is due is not stated.</source>
        <translation>{0}: Fälligkeit der Kalibrierung nicht angegeben.</translation>
    </message>
    <message>
        <source>{0}: with a plug off nothing flows, so a good voltage there tells nothing about resistance. Measure plugged in, with the fan on high.</source>
        <translation>{0}: mit abgezogenem Stecker fließt nichts, eine gute Spannung sagt dort also nichts über den Widerstand. Gesteckt messen, Gebläse auf höchster Stufe.</translation>
    </message>
    <message>
        <source>{0}: {1} Currents are brought to one voltage by the usual exponent instead.</source>
        <translation>{0}: {1} Stattdessen werden die Ströme mit dem üblichen Exponenten auf eine Spannung umgerechnet.</translation>
    </message>
    <message>
        <source>{0}: {1} The recording goes on in {2}.</source>
        <translation>{0}: {1} Die Aufzeichnung geht in {2} weiter.</translation>
    </message>
    <message>
        <source>{0}: {1} This is a fault of the program.</source>
        <translation>{0}: {1} Das ist ein Fehler des Programms.</translation>
    </message>
    <message>
        <source>{0}: {1} This is a fault of the program; report it.</source>
        <translation>{0}: {1} Das ist ein Fehler des Programms; bitte melden.</translation>
    </message>
    <message>
        <source>{0}: {1} bars make as many, and nothing here tells which</source>
        <translation>{0}: {1} Lamellen ergeben ebenso viele, und nichts hier sagt, welche</translation>
    </message>
    <message>
        <source>{0}: {1} bytes were written, {2} are there: edits at its end are missing.</source>
        <translation>{0}: {1} Bytes wurden geschrieben, {2} sind da: Änderungen am Ende fehlen.</translation>
    </message>
    <message>
        <source>{0}: {1} can&apos;t be trusted to be all that was written, and {2} not applied.</source>
        <translation>{0}: {1} ist nicht sicher alles, was geschrieben wurde, und {2} nicht angewandt.</translation>
    </message>
    <message>
        <source>{0}: {1} to {2} {3} within a second or so</source>
        <translation>{0}: {1} bis {2} {3} innerhalb etwa einer Sekunde</translation>
    </message>
    <message>
        <source>{0}: {1}; choose another profile</source>
        <translation>{0}: {1}; ein anderes Profil wählen</translation>
    </message>
    <message>
        <source>{0}: {1}{2}, limit {3} V: {4}</source>
        <translation>{0}: {1}{2}, Grenze {3} V: {4}</translation>
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
        <source>{0}; but {1}</source>
        <translation>{0}; aber {1}</translation>
    </message>
    <message>
        <source>{0}; choose another one</source>
        <translation>{0}; ein anderes wählen</translation>
    </message>
    <message>
        <source>{0}; how many bars make them is not sure</source>
        <translation>{0}; wie viele Lamellen sie machen, ist nicht sicher</translation>
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
        <source>{0}; the good ones were measured in the vehicle as it runs.</source>
        <translation>{0}; die guten wurden im laufenden Fahrzeug gemessen.</translation>
    </message>
    <message>
        <source>{0}; which came first, and whether that is off, is not known: the command recorded with the fan off would settle it</source>
        <translation>{0}; was zuerst kam und ob das Aus ist, ist nicht bekannt: die Ansteuerung bei ausgeschaltetem Gebläse aufgezeichnet würde es klären</translation>
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
        <source>{0}Known: {1}.</source>
        <translation>{0}Bekannt: {1}.</translation>
    </message>
    <message>
        <source>{0}There are: {1}.</source>
        <translation>{0}Es gibt: {1}.</translation>
    </message>
    <message>
        <source>{0}There are: {1}; or give the path of a .toml file.</source>
        <translation>{0}Es gibt: {1}; oder den Pfad einer .toml-Datei angeben.</translation>
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
        <source>? too few good ones</source>
        <translation>? zu wenige gute</translation>
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
        <source>Against good ones: {usual}.</source>
        <translation>Neben guten: {usual}.</translation>
    </message>
    <message>
        <source>Against good ones: {usual}. {lead}</source>
        <translation>Neben guten: {usual}. {lead}</translation>
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
        <source>Beside good {number}: {result}</source>
        <translation>Neben guten {number}: {result}</translation>
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
        <source>Choose the baselines.parquet that meterlog screen has written, on the Recordings page.</source>
        <translation>Auf der Seite Archiv die baselines.parquet wählen, die meterlog screen geschrieben hat.</translation>
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
        <source>Choose what a foot pedal, a ring or a spare key shall do, press Bind, then press it. The keys that are always there stay; a key of your own goes before them. A page that needs a key itself takes it: see the key map at the bottom. While this page is open only the keys at the bottom act: nothing is marked.</source>
        <translation>Wählen, was ein Fußtaster, ein Ring oder eine freie Taste tun soll, Belegen drücken, dann sie drücken. Die Tasten, die es immer gibt, bleiben; eine eigene geht ihnen vor. Braucht eine Seite eine Taste selbst, nimmt sie sie: siehe die Tasten unten. Solange diese Seite offen ist, wirken nur die Tasten unten: nichts wird markiert.</translation>
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
        <source>Enter the part&apos;s number on the Job page.</source>
        <translation>Die Teilenummer auf der Seite Auftrag eintragen.</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
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
        <source>Good ones</source>
        <translation>Gute</translation>
    </message>
    <message>
        <source>Good ones ({good}): {names}</source>
        <translation>Gute ({good}): {names}</translation>
    </message>
    <message>
        <source>Good ones lie within {low} to {high} A; the uncertainty reaches across a limit.</source>
        <translation>Gute liegen zwischen {low} und {high} A; die Unsicherheit reicht über eine Grenze.</translation>
    </message>
    <message>
        <source>Good ones lie within {low} to {high} A; what the meters may be off by, with {unstated} A for a clamp of which nothing is stated, reaches across a limit.</source>
        <translation>Gute liegen zwischen {low} und {high} A; um wie viel die Messgeräte falsch liegen können, mit {unstated} A für eine Zange, von der nichts angegeben ist, reicht über eine Grenze.</translation>
    </message>
    <message>
        <source>Good ones of {number} by {table}, written {day}.</source>
        <translation>Gute der Nummer {number} nach {table}, geschrieben am {day}.</translation>
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
        <source>Holding the new part against good ones</source>
        <translation>Das neue Teil wird mit guten verglichen</translation>
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
        <source>It is not being recorded yet: wait until the meters are connected.</source>
        <translation>Noch wird nicht aufgezeichnet: Warten, bis die Messgeräte verbunden sind.</translation>
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
        <source>NOT WHOLE</source>
        <translation>NICHT VOLLSTÄNDIG</translation>
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
        <source>Neither the recording nor its job says the part number: enter it on the Job page.</source>
        <translation>Weder die Aufzeichnung noch ihr Auftrag nennt die Teilenummer: auf der Seite Auftrag eintragen.</translation>
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
        <source>Plug it in again: the recording goes on, and so will its readings.</source>
        <translation>Wieder einstecken: Die Aufzeichnung läuft weiter, und die Messwerte kommen dann wieder.</translation>
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
        <source>Ports are being opened… the window closes by itself when that is done.</source>
        <translation>Anschlüsse werden geöffnet… danach schließt das Fenster von selbst.</translation>
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
        <source>Screen folders with good runs of it (meterlog screen), or enter the part&apos;s number on the Job page.</source>
        <translation>Ordner mit guten Läufen davon durchsehen lassen (meterlog screen) oder die Teilenummer auf der Seite Auftrag eintragen.</translation>
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
        <source>Speed {speed}: {usual}</source>
        <translation>Stufe {speed}: {usual}</translation>
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
        <source>Tables of baselines ({pattern})</source>
        <translation>Tabellen guter Motoren ({pattern})</translation>
    </message>
    <message>
        <source>Table…</source>
        <translation>Tabelle…</translation>
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
        <source>The job&apos;s folder was not there any more: what is known of the job was put into {folder} anew. What lay beside it is missing.</source>
        <translation>Der Ordner des Auftrags war nicht mehr da: Was vom Auftrag bekannt ist, wurde neu in {folder} abgelegt. Was daneben lag, fehlt.</translation>
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
        <source>The pack of the job {job} is made: {folder}</source>
        <translation>Das Paket des Auftrags {job} ist fertig: {folder}</translation>
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
        <source>The recording has ended and is being sealed: nothing more goes into it.</source>
        <translation>Die Aufzeichnung ist beendet und wird versiegelt: Es kommt nichts mehr hinein.</translation>
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
        <source>The state of the battery is not stated.</source>
        <translation>Der Zustand der Batterie ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The state of the filter is not stated.</source>
        <translation>Der Zustand des Filters ist nicht angegeben.</translation>
    </message>
    <message>
        <source>The table holds none of {number} of its kind.</source>
        <translation>Die Tabelle enthält keine der Nummer {number} von dieser Art.</translation>
    </message>
    <message>
        <source>The table holds {number} for {known} nominal only.</source>
        <translation>Die Tabelle enthält {number} nur für {known} Nennspannung.</translation>
    </message>
    <message>
        <source>The table of good ones: choose its file, baselines.parquet</source>
        <translation>Die Tabelle der guten: ihre Datei wählen, baselines.parquet</translation>
    </message>
    <message>
        <source>The vehicle&apos;s service manual and the local safety rules come before anything shown here.</source>
        <translation>Das Werkstatthandbuch des Fahrzeugs und die örtlichen Sicherheitsregeln gehen allem hier Gezeigten vor.</translation>
    </message>
    <message>
        <source>The window closes by itself when this is done.</source>
        <translation>Das Fenster schließt von selbst, wenn dies beendet ist.</translation>
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
        <source>This is being recorded. Close once more, or press Enter, within 2 seconds to stop, seal and close.</source>
        <translation>Es wird aufgezeichnet. Innerhalb von 2 Sekunden noch einmal schließen oder Enter drücken: Dann wird beendet, versiegelt und geschlossen.</translation>
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
        <source>Typed before this recording began · Enter keeps it in this one · Esc drops</source>
        <translation>Vor Beginn dieser Aufzeichnung getippt · Enter behält es in dieser · Esc verwirft</translation>
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
        <source>Up to {many} good motors of {number} by {table}, written {day}.</source>
        <translation>Bis zu {many} gute Motoren der Nummer {number} nach {table}, geschrieben am {day}.</translation>
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
        <source>Wait until that is done.</source>
        <translation>Warten, bis das beendet ist.</translation>
    </message>
    <message>
        <source>Watch a folder…</source>
        <translation>Ordner dazu…</translation>
    </message>
    <message>
        <source>What is known of the job stays; connect its disk again.</source>
        <translation>Was vom Auftrag bekannt ist, bleibt; den Datenträger wieder anschließen.</translation>
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
        <source>after the repair</source>
        <translation>nach der Reparatur</translation>
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
        <source>all currents</source>
        <translation>alle Ströme</translation>
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
        <source>and {more} more good ones</source>
        <translation>und {more} weitere gute</translation>
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
        <source>back</source>
        <translation>zurück</translation>
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
        <source>before the repair</source>
        <translation>vor der Reparatur</translation>
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
        <source>can&apos;t be looked at: {why}.</source>
        <translation>kann nicht angesehen werden: {why}.</translation>
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
        <source>choose the table of baselines that meterlog screen has written, or its folder</source>
        <translation>die Tabelle guter Motoren wählen, die meterlog screen geschrieben hat, oder ihren Ordner</translation>
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
        <translation>Kollektorlamellen</translation>
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
        <source>found by itself: {found}</source>
        <translation>selbst gefunden: {found}</translation>
    </message>
    <message>
        <source>found by: {words}</source>
        <translation>gefunden durch: {words}</translation>
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
        <source>goes into no claim: {why}.</source>
        <translation>kommt in keinen Antrag: {why}.</translation>
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
        <source>good ones</source>
        <translation>gute</translation>
    </message>
    <message>
        <source>good ones: where they come from, cautions and notes</source>
        <translation>gute: woher sie kommen, Warnungen und Hinweise</translation>
    </message>
    <message>
        <source>good: {run}</source>
        <translation>gut: {run}</translation>
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
        <source>how the new part lies beside good ones</source>
        <translation>wie das neue Teil neben guten liegt</translation>
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
        <source>it holds, next line</source>
        <translation>gilt, nächste Zeile</translation>
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
        <source>leads</source>
        <translation>Leitungen</translation>
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
        <source>searching…</source>
        <translation>Suche läuft…</translation>
    </message>
    <message>
        <source>this run: {of}</source>
        <translation>dieser Lauf: {of}</translation>
    </message>
    <message numerus="yes">
        <source>{n} speeds</source>
        <translation>
            <numerusform>{n} Stufe</numerusform>
            <numerusform>{n} Stufen</numerusform>
        </translation>
    </message>
    <message>
        <source>{own} up to {top} {unit} through it</source>
        <translation>{own} bis {top} {unit} durch sie</translation>
    </message>
    <message>
        <source>↑ ↓ line · ← → choice · digits: number · Enter: it holds, next line · Del: not said</source>
        <translation>↑ ↓ Zeile · ← → Auswahl · Ziffern: Zahl · Enter: gilt, nächste Zeile · Entf: nicht gesagt</translation>
    </message>
    <message>
        <source>Ctrl+1…7</source>
        <translation>Strg+1…7</translation>
    </message>
    <message>
        <source>1.5+0.3 up to 40</source>
        <translation>1.5+0.3 bis 40</translation>
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
        <source>Good ones (F9)</source>
        <translation>Gute (F9)</translation>
    </message>
    <message>
        <source>It holds only if these were the same.</source>
        <translation>Es gilt nur, wenn diese gleich waren.</translation>
    </message>
    <message>
        <source>It is being recorded: stop the recording first.</source>
        <translation>Sie läuft noch: erst die Aufzeichnung beenden.</translation>
    </message>
    <message>
        <source>Put it right on the Meters page, or empty its line; then start.</source>
        <translation>Auf der Seite Messgeräte berichtigen oder die Zeile leeren; dann starten.</translation>
    </message>
    <message>
        <source>Stated on neither side: {names}.</source>
        <translation>Auf keiner Seite angegeben: {names}.</translation>
    </message>
    <message>
        <source>Stated on one side only: {names}.</source>
        <translation>Nur auf einer Seite angegeben: {names}.</translation>
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
        <source>The sensor&apos;s accuracy from its data sheet: percent of the reading, + volts or amperes. It widens the uncertainty of every figure; left empty, the report says that it is not in. With how far the sensor goes, where that is stated: {numbers}. What is read beyond is told, and passes no motor.</source>
        <translation>Die Genauigkeit des Aufnehmers nach Datenblatt: Prozent vom Messwert, + Volt oder Ampere. Sie vergrößert die Unsicherheit jeder Zahl; bleibt sie leer, sagt der Bericht, dass sie fehlt. Dazu, wo es angegeben ist, wie weit er reicht: {numbers}. Was darüber gelesen wird, wird gemeldet und spricht keinen Motor frei.</translation>
    </message>
    <message>
        <source>You may not write in {there}. Choose another folder.</source>
        <translation>In {there} darf nicht geschrieben werden. Einen anderen Ordner wählen.</translation>
    </message>
    <message>
        <source>a condition can&apos;t be taken: {why}</source>
        <translation>eine Bedingung kann nicht übernommen werden: {why}</translation>
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
        <source>leaves the field, then keys act</source>
        <translation>verlässt das Feld, dann wirken Tasten</translation>
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
        <source>look at the difference from good ones of the part number</source>
        <translation>den Unterschied zu guten derselben Teilenummer ansehen</translation>
    </message>
    <message>
        <source>look at the difference from the part before</source>
        <translation>den Unterschied zum Teil vorher ansehen</translation>
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
        <source>motor voltage</source>
        <translation>Motorspannung</translation>
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
        <source>no table: “meterlog screen FOLDER” makes one</source>
        <translation>keine Tabelle: „meterlog screen ORDNER“ macht eine</translation>
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
        <source>none found</source>
        <translation>keine gefunden</translation>
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
        <source>only what lies so beside good ones</source>
        <translation>nur was so neben guten liegt</translation>
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
        <source>standard deviation {sd}</source>
        <translation>Standardabweichung {sd}</translation>
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
        <source>table of good ones that the currents are held against</source>
        <translation>Tabelle der guten, mit denen die Ströme verglichen werden</translation>
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
        <source>the median {median} A of {many} (all within {low} to {high} A)</source>
        <translation>dem Median {median} A von {many} (alle zwischen {low} und {high} A)</translation>
    </message>
    <message>
        <source>the median {median} A of {many} (middle half {low} to {high} A)</source>
        <translation>dem Median {median} A von {many} (mittlere Hälfte {low} bis {high} A)</translation>
    </message>
    <message>
        <source>the new part beside good ones at each speed</source>
        <translation>das neue Teil neben guten bei jeder Stufe</translation>
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
        <source>the one good one&apos;s {median} A</source>
        <translation>den {median} A des einen guten</translation>
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
        <source>what differs from the first run</source>
        <translation>was vom ersten Lauf abweicht</translation>
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
        <source>what is wrong with the table of good ones</source>
        <translation>was mit der Tabelle der guten nicht stimmt</translation>
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
        <source>what the table of good ones holds</source>
        <translation>was die Tabelle der guten enthält</translation>
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
        <source>why there are no good ones beside it</source>
        <translation>warum keine guten daneben stehen</translation>
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
        <source>{head}, {amps} A at {volts} V, {size} % above {good}.</source>
        <translation>{head}, {amps} A bei {volts} V, {size} % über {good}.</translation>
    </message>
    <message>
        <source>{head}, {amps} A at {volts} V, {size} % below {good}.</source>
        <translation>{head}, {amps} A bei {volts} V, {size} % unter {good}.</translation>
    </message>
    <message>
        <source>{head}, {amps} A: its motor voltage is not known or too far from {volts} V, where {good} stand.</source>
        <translation>{head}, {amps} A: die Motorspannung ist nicht bekannt oder zu weit von {volts} V, bei denen gute verglichen werden mit {good}.</translation>
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
        <source>{many} good motors of {number} by {table}, written {day}.</source>
        <translation>
            <numerusform>{many} guter Motor der Nummer {number} nach {table}, geschrieben am {day}.</numerusform>
            <numerusform>{many} gute Motoren der Nummer {number} nach {table}, geschrieben am {day}.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>{many} part numbers: {names}</source>
        <translation>
            <numerusform>{many} Teilenummer: {names}</numerusform>
            <numerusform>{many} Teilenummern: {names}</numerusform>
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
        <source>{n} readings</source>
        <translation>{n} Messwerte</translation>
    </message>
    <message>
        <source>{own} up to {top} {unit}</source>
        <translation>{own} bis {top} {unit}</translation>
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
        <source>±A is a lower bound: {lacking}</source>
        <translation>±A ist eine Untergrenze: {lacking}</translation>
    </message>
    <message>
        <source>– no baseline</source>
        <translation>– keine guten</translation>
    </message>
    <message>
        <source>– not comparable</source>
        <translation>– nicht vergleichbar</translation>
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
        <source>▲ higher</source>
        <translation>▲ höher</translation>
    </message>
    <message>
        <source>▲▼ higher and lower</source>
        <translation>▲▼ höher und tiefer</translation>
    </message>
    <message>
        <source>▼ lower</source>
        <translation>▼ tiefer</translation>
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
        <source>⚠ Other {name}: good ones {good}, this one {new}: {words}.</source>
        <translation>⚠ Anders: {name}: gute {good}, dieses {new}: {words}.</translation>
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
        <source>✓ as usual</source>
        <translation>✓ wie üblich</translation>
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
