// Was neben dem Plan gesagt wird, nach der Form des Satzes.

/** A place, or a way between two. */
const where = (text) => (text.includes(' – ') ? `der Strecke ${text}` : text);

export const ahead = [
  [/^job\.yaml names no file for it, so nothing is said\.$/, 'job.yaml nennt keine Datei dafür, darum wird nichts gesagt.'],
  [/^Notices near the day$/, 'Meldungen nahe dem Tag'],
  [/^Read the source: this list is a distance and a search for words, no briefing\.$/, 'Die Quelle lesen: Diese Liste ist ein Abstand und eine Wortsuche, keine Beratung.'],
  [/^The file holds no text at all\.$/, 'Die Datei enthält gar keinen Text.'],
  [/^Line (\S+), item (\S+) is unread: (nothing stands there|'.*'); readable is (.+)\.$/s, (_, line, item, value, allowed) => `Zeile ${line}, Feld ${item === 'head' ? 'Kopf' : item} ist nicht gelesen: ${value === 'nothing stands there' ? 'dort steht nichts' : value}; lesbar ist ${READABLE[allowed] ?? allowed}.`],
  [/^Its circle may reach (.+)\.$/, (_, what) => `Ihr Kreis reicht vielleicht bis ${what}.`],
  [/^From (.+) its circle is (.+) away or more\.$/, (_, what, far) => `Von ${where(what)} ist ihr Kreis ${far} entfernt oder mehr.`],
  [/^From (.+) a position in its text is (.+) away or more\.$/, (_, what, far) => `Von ${where(what)} ist ein Ort in ihrem Text ${far} oder mehr entfernt.`],
  [/^In force in the day's hours: from (.+) until (.+) UTC\.$/, (_, from, until) => `Gilt in den Stunden des Tages: von ${from} bis ${ends(until)} UTC.`],
  [/^Not in force in the day's hours: from (.+) until (.+) UTC\.$/, (_, from, until) => `Gilt nicht in den Stunden des Tages: von ${from} bis ${ends(until)} UTC.`],
  [/^Within that only at the times of its item D: read them\.$/, 'Darin nur zu den Zeiten ihres Feldes D: die lesen.'],
  [/^Flight levels (\S+) to (\S+) as a filter; what counts is its text\.$/, 'Flugflächen $1 bis $2 als Filter; was zählt, ist ihr Text.'],
  [/^Flight levels (.+) as a filter; what counts is its text\.$/, 'Flugflächen $1 als Filter; was zählt, ist ihr Text.'],
  [/^It cancels (\S+)\.$/, 'Sie hebt $1 auf.'], [/^It replaces (\S+)\.$/, 'Sie ersetzt $1.'],
  [/^Replaced or cancelled by (.+), says the file\.$/, 'Ersetzt oder aufgehoben durch $1, sagt die Datei.'],
  [/^It speaks of an obstacle or its light\.$/, 'Sie spricht von einem Hindernis oder seinem Feuer.'],
  [/^It speaks of a wire or a cable\.$/, 'Sie spricht von einer Leitung oder einem Seil.'],
  [/^It speaks of airspace that is closed, restricted or dangerous\.$/, 'Sie spricht von gesperrtem, beschränktem oder gefährlichem Luftraum.'],
  [/^It speaks of others who fly, jump or lift something\.$/, 'Sie spricht von anderen, die fliegen, springen oder etwas heben.'],
  [/^It speaks of blasting, fire, smoke or beams of light\.$/, 'Sie spricht von Sprengen, Feuer, Rauch oder Lichtstrahlen.'],
  [/^It speaks of fuel\.$/, 'Sie spricht von Treibstoff.'],
  [/^Its words name nothing of what is looked for here\.$/, 'Ihre Worte nennen nichts von dem, was hier gesucht wird.'],
  [/^Notices that cannot be read as a whole: (.+)\. Read them in the source\.$/, (_, names) => `Meldungen, die sich nicht ganz lesen lassen: ${names.replace(/\bline (\d+)/g, 'Zeile $1')}. In der Quelle lesen.`],
  [/^First feasibility$/, 'Erste Machbarkeit'], [/^A planning value, not clearance to fly\.$/, 'Ein Planungswert, keine Freigabe zum Flug.'],
  [/^Nothing says how high this place is\.$/, 'Nichts sagt, wie hoch dieser Platz liegt.'],
  [/^Least hover mass of all places in (.+), at (.+) and (.+): half of the hours up to (.+): (.+); nine of ten up to (.+): (.+)\.$/, (_, month, high, qnh, mild, more, warm, less) => `Kleinste Schwebemasse aller Plätze im ${MONTHS[month] ?? month}, auf ${high} und bei ${qnh}: Hälfte der Stunden bis ${mild}: ${more}; neun von zehn bis ${warm}: ${less}.`],
  [/^The month's air is from: (.+)\.$/, 'Die Luft des Monats ist aus: $1.'],
  [/^Fuel of (.+) leaves a piece at most (.+) in half of the hours, at most (.+) in nine of ten; for construction at most (.+)\.$/, 'Treibstoff von $1 lässt einem Stück in der Hälfte der Stunden höchstens $2, in neun von zehn höchstens $3; für Montage höchstens $4.'],
  [/^Counted is line (.+), the heaviest, with the straight way there and back and no wind\.$/, 'Gerechnet ist Leine $1, die schwerste, mit dem geraden Weg hin und zurück und ohne Wind.'],
  [/^No mass is stated, so nothing is said\.$/, 'Keine Masse ist angegeben, darum wird nichts gesagt.'],
  [/^It weighs (.+); with (.+) of fuel at most (.+) can be lifted in nine of ten hours: the heaviest (.+) that is liftable\.$/, 'Wiegt $1; mit $2 Treibstoff lassen sich in neun von zehn Stunden höchstens $3 heben: die schwerste hebbare Last der Art $4.'],
  [/^Liftable\.$/, 'Hebbar.'],
  [/^It weighs (.+); with (.+) of fuel at most (.+) can be lifted in half of the hours, at most (.+) in nine of ten\.$/, 'Wiegt $1; mit $2 Treibstoff lassen sich in der Hälfte der Stunden höchstens $3 heben, in neun von zehn höchstens $4.'],
  [/^Only in the cooler hours, or split it\.$/, 'Nur in den kühleren Stunden, oder teilen.'],
  [/^Split it: (\S+) pieces or more, or a larger machine\.$/, 'Teilen: in $1 Stücke oder mehr, oder eine größere Maschine.'],
  [/^A larger machine, or something lighter in its place\.$/, 'Eine größere Maschine, oder etwas Leichteres an ihrer Stelle.'],
  [/^Weather standby$/, 'Warten auf Wetter'], [/^History is not a forecast\.$/, 'Die Vergangenheit ist keine Vorhersage.'],
  [/^No day of the archive has a row in daylight\.$/, 'Kein Tag des Archivs hat eine Zeile bei Tageslicht.'],
  [/^Usable days: (\S+) of (\S+)\.$/, 'Brauchbare Tage: $1 von $2.'],
  [/^Usable days, with at least (\S+) usable hours together: (\S+) %, (\S+) of (\S+) days in (\S+) seasons?\.$/, 'Brauchbare Tage, mit mindestens $1 brauchbaren Stunden hintereinander: $2 %, $3 von $4 Tagen, Jahre: $5.'],
  [/^With so many seasons the true share may be anything between (\S+) and (\S+) % \(95 in 100\)\.$/, 'Bei so vielen Jahren kann der wahre Anteil überall zwischen $1 und $2 % liegen (95 von 100).'],
  [/^Usable hours: (\S+) % of (\S+) hours of daylight\.$/, 'Brauchbare Stunden: $1 % von $2 Stunden Tageslicht.'],
  [/^Of the lost hours wind stops (\S+) %, cloud (\S+) %, visibility (\S+) %\.$/, 'Von den verlorenen Stunden hindert der Wind $1 %, die Wolken $2 %, die Sicht $3 %.'],
  [/^For each day of work reckon with (\S+) days there on the mean\.$/, 'Für jeden Arbeitstag im Mittel mit $1 Tagen vor Ort rechnen.'],
  [/^The archive is: (.+)\.$/, 'Das Archiv ist: $1.'],
  [/^Gaps: (\S+) hours of daylight, counted as not usable, and (\S+) whole days, not counted\.$/, 'Lücken: $1 Stunden Tageslicht, als nicht brauchbar gezählt, und $2 ganze Tage, nicht gezählt.'],
  [/^No least cloud base is stated: cloud is not counted\.$/, 'Keine geringste Wolkenhöhe ist angegeben: Wolken zählen nicht.'],
  [/^No least visibility is stated: visibility is not counted\.$/, 'Keine geringste Sicht ist angegeben: Die Sicht zählt nicht.'],
  [/^Layout of the laydowns$/, 'Anlage der Ladeplätze'], [/^Pace it on the ground: the map knows no parked vehicle and nobody on foot\.$/, 'Am Boden abschreiten: Die Karte kennt kein abgestelltes Fahrzeug und niemanden zu Fuß.'],
  [/^Into the wind, 30° to both sides, nothing of roads, houses, people, masts and wires is within (.+)\.$/, 'Gegen den Wind, 30° zu beiden Seiten, liegt innerhalb von $1 keine Straße, kein Haus, niemand, kein Mast und keine Leitung.'],
  [/^Into the wind, 30° to both sides, (.+) is (.+) away, in (\S+) of (\S+) hours\.$/, 'Gegen den Wind, 30° zu beiden Seiten, ist $1 $2 entfernt, in $3 von $4 Stunden.'],
  [/^The map knows no road, trail, house or people here; they keep at least (.+) from the rotor\.$/, 'Die Karte kennt hier keine Straße, keinen Weg, kein Haus und niemanden; vom Rotor bleiben sie mindestens $1 weg.'],
  [/^Nearest of roads, trails, houses and people: (.+) is (.+) away; people keep at least (.+) from the rotor\.$/, 'Das Nächste von Straßen, Wegen, Häusern und Leuten: $1 ist $2 entfernt; Leute bleiben mindestens $3 vom Rotor weg.'],
  [/^Fuel is kept here, in zone (.+), where none is handled\.$/, 'Hier liegt Treibstoff, in der Zone $1, in der keiner gehandhabt wird.'], [/^Fuel is kept here\.$/, 'Hier liegt Treibstoff.'],
  [/^No fuel is kept here; the nearest is at (.+), which is (.+) away\.$/, 'Hier liegt kein Treibstoff; der nächste liegt an $1, $2 entfernt.'], [/^No fuel is kept at any place\.$/, 'An keinem Platz liegt Treibstoff.'],
  [/^For vehicles: (.+) is (.+) away\.$/, 'Für Fahrzeuge: $1 ist $2 entfernt.'],
  [/^No road or track of the map comes within (.+): how do loads and fuel get here\?$/, 'Keine Straße und kein Fahrweg der Karte kommt näher als $1: Wie kommen Lasten und Treibstoff hierher?'],
  [/^Ways out over (.+): (\S+) of (\S+) headings are free, the widest opening has (\S+)°\.$/, 'Auswege über $1: $2 von $3 Richtungen sind frei, die weiteste Öffnung hat $4°.'],
  [/^No way with a load passes over roads, trails, railways, houses or people within ([^;]+); farther out (\S+) of (\S+) do, these at the nearest: (.+)\.$/, 'Kein Weg mit Last kommt auf seinen ersten $1 über Straßen, Wege, Bahnen, Häuser oder Leute; weiter draußen $2 von $3, deren nächste Stelle: $4.'],
  [/^No way with a load passes over roads, trails, railways, houses or people within ([^;]+)\.$/, 'Kein Weg mit Last kommt auf seinen ersten $1 über Straßen, Wege, Bahnen, Häuser oder Leute.'],
  [/^Ways with a load within (.+?) pass over: (.+); loads: (.+)\.$/, 'Auf ihren ersten $1 kommen Wege mit Last über: $2; Lasten: $3.'],
  [/^Permits$/, 'Genehmigungen'], [/^Local law decides\.$/, 'Das örtliche Recht entscheidet.'],
  [/^(Landing|Hovering|Flying low|Unloading) here: (.*)$/, (_, what, places) => `${{ Landing: 'Landen', Hovering: 'Schweben', 'Flying low': 'Tief fliegen', Unloading: 'Absetzen' }[what]} hier: ${places.replace(/\blegs\b/, 'Strecken')}`],
  [/^No letter holds on this day: ask whose land it is\.$/, 'Kein Schreiben gilt an diesem Tag: den fragen, dessen Land es ist.'],
  [/^No letter holds at these hours: ask whose land it is\.$/, 'Kein Schreiben gilt zu diesen Stunden: den fragen, dessen Land es ist.'],
  [/^Planned from (\S+) to (\S+)\.$/, 'Geplant von $1 bis $2.'], [/^The plan does it then, first at (\S+)\.$/, 'Der Plan tut es dann, zuerst um $1.'],
  [/^The plan comes within half an hour of that\.$/, 'Der Plan kommt dem auf eine halbe Stunde nahe.'], [/^The plan does it at other hours\.$/, 'Der Plan tut es zu anderen Stunden.'],
  [/^The plan does it when no letter holds, first at (\S+)\.$/, 'Der Plan tut es, wenn kein Schreiben gilt, zuerst um $1.'],
  [/^The plan comes within half an hour of hours in which no letter holds\.$/, 'Der Plan kommt Stunden, in denen kein Schreiben gilt, auf eine halbe Stunde nahe.'],
  [/^For some hours of the duty no letter holds\.$/, 'Für manche Stunden des Dienstes gilt kein Schreiben.'],
  [/^(Allowed|Forbidden|Needs a permit: none is stated|Needs a permit: .+? is at hand)(?: ([^,]+))?, says (.+)\.$/, (_, what, held, letter) => `${ruling(what)}${held ? ` ${hours(held)}` : ''}, laut ${letter}.`],
];

/** "from 12:00 to 13:30" as hours of zones and letters are told. */
export const hours = (said) => said.replace(/^from (\S+) to (\S+)$/, 'von $1 bis $2').replace(/^from (\S+) on$/, 'ab $1').replace(/^until (\S+)$/, 'bis $1');
const ruling = (what) => ({ Allowed: 'Erlaubt', Forbidden: 'Verboten', 'Needs a permit: none is stated': 'Braucht eine Genehmigung: keine ist angegeben' })[what] ?? what.replace(/^Needs a permit: (.+) is at hand$/, 'Braucht eine Genehmigung: $1 liegt vor');

const MONTHS = { January: 'Januar', February: 'Februar', March: 'März', April: 'April', May: 'Mai', June: 'Juni', July: 'Juli', August: 'August', September: 'September', October: 'Oktober', November: 'November', December: 'Dezember' };

const READABLE = {
  'a place as 4701N01105E with a radius of three digits': 'ein Ort wie 4701N01105E mit einem Radius aus drei Ziffern',
  'ten digits as 2609080600': 'zehn Ziffern wie 2609080600',
  'ten digits as 2609080600 after item B, EST behind it, or PERM': 'zehn Ziffern wie 2609080600 nach Feld B, EST dahinter, oder PERM',
  'the text of the notice': 'der Text der Meldung',
  'a number as A0123/26 and NOTAMN, NOTAMR or NOTAMC': 'eine Nummer wie A0123/26 und NOTAMN, NOTAMR oder NOTAMC',
};

const ends = (until) => until.replace('further notice', 'auf Weiteres').replace('(estimated)', '(geschätzt)');
