// Sentences of the server in German, by their shape; the values stand where they stood. A shape that is not
// here stays English on the page, and is marked so for those who hear it read.
const PARTS = [
  [/\brotor\b/g, 'Rotor'], [/\btail\b/g, 'Heck'], [/\bline\b/g, 'Leine'], [/\bload\b/g, 'Last'], [/ to trees\b/g, ' gegen Bäume'], [/ to ground\b/g, ' gegen Boden'], [/ to wires?\b/g, ' gegen Leitung'],
  [/ to (?=\d)/g, ' bis '], [/ to (?=[A-Z]\w)/g, ' nach '], [/\(guards\)/g, '(Posten)'], [/\((\d+°) beside\)/g, '($1 daneben)'], [/\bpasses over\b/g, 'kommt über'], [/\bpasses\b/g, 'kommt an'], [/\bguards?\b/g, 'Posten'],
];
/** Values that are words themselves. */
const part = (text = '') => PARTS.reduce((said, [from, to]) => said.replace(from, to), text);

/** Why a lift comes when it comes, after its colon or semicolon. */
const WHY = [
  [/^as soon as the machine is there$/, 'sobald die Maschine da ist'], [/^as soon as it may$/, 'sobald sie darf'], [/^the (?:wind|forecast) closes it at (.+)$/, 'laut Vorhersage geht es nur bis $1'],
  [/^(.+) is not there before$/, '$1 ist nicht früher da'], [/^whoever hooks at (.+) has refuelled$/, 'wer an $1 einhängt, hat getankt'], [/^(.+) must have made the place ready$/, '$1 muss den Ort bereitet haben'],
  [/^(.+) must be down for long enough$/, '$1 muss lange genug stehen'], [/^(.+) is not ready before$/, '$1 ist nicht früher bereit'], [/^nobody is at (.+) before$/, 'früher ist niemand an $1'], [/^the wind at (.+) is over its limit$/, 'der Wind an $1 liegt über der Grenze'], [/^it is next$/, 'sie ist die nächste'], [/^the order is free$/, 'die Reihenfolge ist frei'],
];
const why = (text) => text.split('; ').map((one) => WHY.reduce((said, [from, to]) => said.replace(from, to), one)).map(part).join('; ');

/** How else a light, large load may fly. */
const REMEDIES = [
  [/^slower, at no more than (.+)$/, 'langsamer, höchstens $1'], [/^(.+) of ballast under it$/, '$1 Ballast darunter'], [/^(.+) of them in one bundle$/, '$1 davon in einem Bündel'], [/^a line of (.+): (.+)$/, 'eine Leine von $1: $2'], [/^a drogue: (.+)$/, 'ein Bremsschirm: $1'],
];
const remedies = (text) => text.split('; ').map((one) => REMEDIES.reduce((said, [from, to]) => said.replace(from, to), one)).join('; ');

/** A sentence within another one; as it came where its shape is not known. */
function german(text) {
  const known = says.find(([shape]) => shape.test(text));
  return known ? text.replace(known[0], known[1]) : text;
}

/** Ways in and out as they are weighed. */
const WAY = [
  [/\bworse like (\d+°) off the wind/g, 'schlechter wie $1 neben dem Wind'], [/\bbetter like (\d+°) off the wind/g, 'besser wie $1 neben dem Wind'], [/\bno worse\b/g, 'nicht schlechter'], [/\bis taken\b/g, 'wird genommen'],
  [/\bstraight into the wind\b/g, 'gerade gegen den Wind'], [/\bstraight into it:/g, 'gerade dagegen:'], [/\boff the wind\b/g, 'neben dem Wind'], [/; on track\b/g, '; auf Kurs'], [/\bno better leg was found\b/g, 'fand sich kein besserer Weg'],
  [/\bthe leg would pass over ([^;]+)/g, 'käme der Weg über $1'], [/\bthe leg would cost (.+) s more/g, 'kostete der Weg $1 s mehr'], [/\blet go there it could come down on ([^;]+)/g, 'dort abgeworfen käme sie auf $1 herunter'], [/\bpasses over ([^;)(]+)/g, 'kommt über $1'], [/\bpasses ([^;)]+)/g, 'kommt an $1 vorbei'],
  [/\btailwind over (.+?) in (.+?) of wind/g, 'Rückenwind über $1 bei $2 Wind'], [/\bcrosswind over (.+?) in (.+?) of wind/g, 'Seitenwind über $1 bei $2 Wind'], [/\btailwind\b/g, 'Rückenwind'], [/\blittle room\b/g, 'wenig Raum'], [/\bno room\b/g, 'kein Raum'], [/\bno way out ahead if it goes wrong\b/g, 'kein Ausweg voraus, wenn es schiefgeht'],
  [/\bthe sun stands (\d+°) up\b/g, 'Sonne $1 hoch'], [/\bover the nose\b/g, 'über der Nase'], [/(\d+°) left of the nose/g, '$1 links der Nase'], [/(\d+°) right of the nose/g, '$1 rechts der Nase'],
];
const way = (text) => part(WAY.reduce((said, [from, to]) => said.replace(from, to), text));

export const says = [
  // Whoever answers for a finding says why in a language of their own.
  [/^(.+) OVERRIDDEN by (.+?) on (\S+): (.*)$/s, (_, finding, who, when, reason) => `${german(finding)} ÜBERGANGEN von ${who} am ${when}: ${reason}`],
  [/^Nobody is landed at a site, level as this one is: loads come down here\. Perhaps a place of kind landing beside it, with a way on foot\.$/, 'An einem Platz wird niemand abgesetzt, so eben dieser ist: hier kommen Lasten herunter. Vielleicht ein Landeplatz (kind landing) daneben, mit einem Weg zu Fuß.'],
  [/^No day was found in which it fits: wind, light, crews, fuel or duty end first\. This is a search's answer, not a proof\.$/, 'Kein Tag wurde gefunden, in den sie passt: Wind, Tageslicht, Trupps, Treibstoff oder Dienstzeit enden vorher. Das ist die Antwort einer Suche, kein Beweis.'],
  [/^No day was found in which it fits: wind, light, crews, fuel or duty end first\. No place keeps fuel that somebody there may fill: what is aboard in the morning is all there is\. This is a search's answer, not a proof\.$/, 'Kein Tag wurde gefunden, in den sie passt: Wind, Tageslicht, Trupps, Treibstoff oder Dienstzeit enden vorher. Nirgends liegt Treibstoff, den dort jemand füllen darf: es gibt nur, was am Morgen im Tank ist. Das ist die Antwort einer Suche, kein Beweis.'],
  [/^No crew that may do the work can come there, on foot or by air\. Perhaps another crew, another place to land, or somebody who stays there\.$/, 'Kein Trupp, der die Arbeit tun darf, kommt dorthin, zu Fuß oder durch die Luft. Vielleicht ein anderer Trupp, ein anderer Landeplatz, oder jemand, der dort bleibt.'],
  [/^No crew that may (hook|receive|receive and guy) can come to (\S+), on foot or by air\. Perhaps such a crew that serves it, a landing place with a way on foot to it, or somebody who stays there\.$/, (_, does, place) => `Kein Trupp, der ${{ hook: 'anhängen', receive: 'empfangen', 'receive and guy': 'empfangen und abspannen' }[does]} darf, kommt nach ${place}, zu Fuß oder durch die Luft. Vielleicht ein solcher Trupp, der den Platz bedient, ein Landeplatz mit einem Fußweg dorthin, oder jemand, der dort bleibt.`],
  [/^Nobody who stays at (\S+) may receive\. Perhaps a crew that starts and stays there, with the role receive\.$/, 'Niemand, der an $1 bleibt, darf empfangen. Vielleicht ein Trupp, der dort beginnt und bleibt, mit der Rolle receive.'],
  [/^Nobody who stays at (\S+) hooks it on, and at (\S+) too a crew would have to come; one lift is planned with one crew that comes\. Perhaps somebody who stays at \S+, with the role hook and without guy\.$/, 'Niemand, der an $1 bleibt, hängt sie an, und auch nach $2 müsste ein Trupp kommen; ein Flug wird mit einem Trupp geplant, der kommt. Vielleicht jemand, der an $1 bleibt, mit der Rolle hook und ohne guy.'],
  [/^(\S+), which must come before it, is left out\.$/, '$1 muss vor ihr kommen und bleibt liegen.'],
  [/^(\S+) has left (\S+) as the last thing there; nothing is brought there any more\. If it is still worked there, state its kind as not last at its place\.$/, '$1 hat $2 als Letztes verlassen; dorthin wird nichts mehr gebracht. Wird dort noch gearbeitet, die Art von $1 als nicht letzte am Platz angeben.'],
  [/^It waits for itself: (.+)\. Mend what must come before what\.$/, (_, waits) => `Sie wartet auf sich selbst: ${waits.replace(/(\S+) comes after (\S+)/g, '$1 kommt nach $2').replace(/(\S+) leaves (\S+) after (\S+)/g, '$1 verlässt $2 nach $3').replace(/(\S+) makes ready for (\S+)/g, '$1 macht den Platz bereit für $2')}. Bessern, was vor was kommen muss.`],
  [/^as the files state it$/, 'wie die Dateien es sagen'], [/^all that lies at (\S+) lies at (\S+)$/, 'was an $1 liegt, liegt an $2'], [/^line (.+) alone$/, 'nur mit der Leine $1'], [/^flown by (.+)$/, 'geflogen von $1'],
  [/^the owner of (\S+) agrees to its use$/, '$1 wird zugesagt'], [/^(\S+) stands at (\S+)$/, '$1 steht an $2'], [/^fuel stays at (\S+)$/, 'der Treibstoff bleibt an $1'], [/^a minute costs what one of (.+) costs$/, 'eine Minute kostet so viel wie bei $1'],
  [/^The wind is just within the limit of this load: (.+) at (.+)\. Ask for it again before the lift\.$/, 'Der Wind liegt nur knapp innerhalb der Grenze dieser Last, am Platz $2. Vor dem Heben noch einmal fragen.'],
  [/^The zone (.+) begins (.+) away, nearer than a last part is long\. Mind it on the way in and out\.$/, 'Die Zone $1 beginnt in $2 Entfernung, näher als ein Endteil lang ist. Beim Weg hinein und hinaus beachten.'],
  [/^(.+) at (.+) is not trained to hook and is not counted for it\.$/, '$1 bei $2 ist nicht zum Anhängen ausgebildet und zählt dafür nicht.'],
  [/^Nobody who stays at its pick-up is trained to hook\. Perhaps a loader there\.$/, 'Niemand, der am Aufnahmeplatz bleibt, ist zum Anhängen ausgebildet. Vielleicht ein Lader dort.'],
  [/^Nobody who stays at its pick-up (\S+) may hook\. Perhaps a crew that starts and stays there, with the role hook\.$/, 'Niemand, der am Aufnahmeplatz $1 bleibt, darf anhängen. Vielleicht ein Trupp, der dort beginnt und bleibt, mit der Rolle hook.'],
  [/^The mass is estimated; planned with (.+) for lift\. Weigh it before it flies\.$/, 'Die Masse ist geschätzt; geplant wird mit $1. Vor dem Flug wägen.'],
  [/^No mass is stated\. It stays behind until it is weighed\.$/, 'Keine Masse angegeben. Bleibt da, bis gewogen ist.'],
  [/^The largest gap between guys is (.+?)°\. The pole falls into the gap: guys only pull\. These would hold: (.+)\.$/, 'Die größte Lücke zwischen Abspannungen ist $1°. In sie fällt der Mast: Abspannungen ziehen nur. Diese hielten: $2.'],
  [/^With the lightest line (.+) hang on the hook, which may carry (.+?)\. Perhaps it can be split\.$/, 'Mit der leichtesten Leine hängen $1 am Haken, der $2 tragen darf. Vielleicht lässt sie sich teilen.'],
  [/^Light for its size: add (.+) of ballast and fly it at no more than (.+)\.$/, 'Leicht für ihre Größe: $1 Ballast dazu und nicht schneller als $2.'],
  [/^At the best hour it lifts with at most (.+) of fuel; the trip with reserve and contingency needs (.+?)\. Perhaps it can be split\.$/, 'Zur besten Stunde hebt sie mit höchstens $1 Treibstoff; der Flug mit Reserve braucht $2. Vielleicht lässt sie sich teilen.'],
  [/^It cannot be lifted with any fuel, at no hour(?:: with none aboard it is still (.+) too heavy)?; the trip with reserve and contingency needs (.+?)\. Perhaps it can be split\.$/, (_, over, needs) => `Sie lässt sich zu keiner Stunde heben, mit gar keinem Treibstoff${over ? `: auch mit leerem Tank ist sie um ${over} zu schwer` : ''}; der Flug mit Reserve braucht ${needs}. Vielleicht lässt sie sich teilen.`],
  [/^The search was stopped before a day was found in which it fits\. Perhaps more time\.$/, 'Die Suche endete, bevor ein Tag gefunden war, in den sie passt. Vielleicht mehr Zeit.'],
  [/^Stopped before there was a day\.$/, 'Angehalten, bevor es einen Tag gab.'],
  [/^The search was stopped before there was a day\. Perhaps more time\.$/, 'Die Suche endete, bevor es einen Tag gab. Vielleicht mehr Zeit.'],
  [/^The search was stopped before all ways for it were looked at\. Perhaps more time\.$/, 'Die Suche endete, bevor alle Wege für sie angesehen waren. Vielleicht mehr Zeit.'],
  [/^This wire stands in no official obstacle file\. Look for it, and for others like it\.$/, 'Diese Leitung steht in keinem amtlichen Verzeichnis. Nach ihr suchen, und nach anderen wie ihr.'],
  [/^Not used: its owner has not agreed\.$/, 'Nicht benützt: nicht zugesagt.'],
  [/^Refused for landing people: (the canopy raster has trees within|trees are stated around it, and no clearing of) (\S+ m), which rotor or tail with rotor-clearance-m take\. Who saw none states the place's canopy_m and clearing_radius_m\.$/, (_, what, within) => `Zum Absetzen von Leuten verweigert: ${what.startsWith('the') ? `das Raster der Bäume hat welche innerhalb von ${within}` : `ringsum sind Bäume angegeben, und keine Lichtung von ${within}`}, die Rotor oder Heck mit rotor-clearance-m brauchen. Wer keine sah, trägt canopy_m und clearing_radius_m des Ortes ein.`],
  [/^The rules let people leave in the hover; no plan makes use of it: they are landed on ground of at most (.+), or walk\.$/, 'Nach den Regeln dürfen Leute im Schweben aussteigen; kein Plan nützt das: sie werden auf Boden von höchstens $1 abgesetzt oder gehen.'],
  [/^Refused for landing people: the ground slopes (.+)\.$/, 'Zum Absetzen von Leuten verweigert: der Boden neigt sich $1.'],
  [/^The trail (.+) passes (.+) away: a guard and a rope are needed\.$/, 'Der Pfad $1 führt in $2 vorbei: ein Posten und ein Seil sind nötig.'],
  [/^With the line (.+) at (.+) into the wind (.+) are missing: refused, a longer one is used\.$/, 'Mit der Leine $1 fehlen an $2 gegen den Wind $3: verweigert, eine längere wird genommen.'],
  [/^With the line (.+) at (.+) into the wind (.+) are to spare, less than the trees' uncertainty\.$/, 'Mit der Leine $1 bleiben an $2 gegen den Wind $3 übrig, weniger als die Bäume ungewiss sind.'],
  [/^With the line (.+) on heading (.+) the (rotor|tail|line|load) is near to trees: what is not known comes to (.+)\.$/, 'Mit der Leine $1 auf $2 kommt ($3) nahe an Bäume: ungewiss sind $4.'],
  [/^The straight way (.+) passes (.+) too near; refused, the way goes round it\.$/, 'Der gerade Weg $1 kommt $2 zu nahe; verweigert, der Weg führt herum.'],
  [/^Loads pass over (.+) by agreement, near a right angle and high above it; letting go is no option there\. The line owner decides\.$/, 'Lasten queren $1 nach Absprache, fast im rechten Winkel und hoch darüber; abwerfen geht dort nicht. Der Leitungseigner entscheidet.'],
  [/^Loads pass over (.+): only while it is guarded\. Perhaps another laydown avoids it\.$/, 'Lasten queren $1: nur solange bewacht. Vielleicht vermeidet es ein anderer Ladeplatz.'],
  [/^With (.+) there is no spot for (.+) s where it may be let go without a guard: it would come down on (.+)\.$/, 'Mit $1 gibt es $2 s lang keine Stelle, an der ohne Posten abgeworfen werden darf: sie käme auf $3 herunter.'],
  [/^For (.+) s no agreed release area lies below or within 10 s of flight\. (.+) would serve once the owner agrees\.$/, '$1 s lang liegt keine zugesagte Abwurffläche darunter oder innerhalb von 10 s Flug. $2 diente, sobald der Eigner zusagt.'],
  [/^For (.+) s no agreed release area lies below or within 10 s of flight\. No other area is named there; perhaps one can be agreed\.$/, '$1 s lang liegt keine zugesagte Abwurffläche darunter oder innerhalb von 10 s Flug. Keine andere ist dort benannt; vielleicht lässt sich eine zusagen.'],
  [/^Let go on a part of this way (.+) lands clear but does not come to rest by friction, and (.+) lies in its run: keep people out of there while it is flown, or do not fly it\.$/, 'Auf einem Teil dieses Weges abgeworfen, kommt $1 frei auf, bleibt aber nicht liegen, und $2 liegt in ihrem Lauf: dort die Leute fernhalten oder nicht fliegen.'],
  [/^straight into the wind$/, 'gerade gegen den Wind'],
  [/^straight into the wind \(little room, (.+)\)$/, 'gerade gegen den Wind (wenig Raum, $1)'],
  [/^(\d+°) off the wind; straight into it: (?:passes|passes over) (.+)$/, '$1 neben dem Wind; gerade dagegen: kommt an $2 vorbei'],
  [/^second best: track (\d+°), (\d+°) off the wind(?: \(little room, (.+)\))?$/, 'Zweitbeste: Kurs $1, $2 neben dem Wind'],
  [/^(?:second best|else): track (.+)$/, (_, rest) => `Zweitbeste: Kurs ${way(rest)}`],
  [/^next to tracks (.+?): (.+)$/, (_, tracks, rest) => `Neben Kursen ${part(tracks)}: ${way(rest)}`],
  [/^refused comfort: no sun in the eyes, (.+)$/, 'versagt: keine Sonne in den Augen, $1'], [/^refused comfort: no sun in the sight down the line, (.+)$/, 'versagt: keine Sonne im Blick die Leine hinab, $1'],
  [/^refused comfort: no tailwind, (.+)$/, 'versagt: kein Rückenwind, $1'], [/^refused comfort: less crosswind, (.+)$/, 'versagt: weniger Seitenwind, $1'],
  [/^way out: track (.+)$/, (_, rest) => `Abflug: Kurs ${way(rest)}`], [/^(\S+): out on track (.+)$/, (_, place, rest) => `${place}: ab auf Kurs ${way(rest)}`],
  [/^on the way what is passed over counts: (.+)$/, (_, rest) => `unterwegs zählt, was überflogen wird: ${rest.replace(/ground along roads/g, 'Boden an Straßen').replace(/steep ground/g, 'steiler Boden')}`],
  [/^letting go on the way: (?:at most (\d+) s on end without a spot for it|a spot for it everywhere)(.*)$/, (_, longest, rest) => `Abwerfen unterwegs: ${longest ? `höchstens ${longest} s am Stück ohne Stelle dafür` : 'überall eine Stelle dafür'}${rest.replace('agreed areas below:', 'zugesagte Flächen darunter:').replace('agreed areas near:', 'zugesagte Flächen nahe:').replace('would serve once agreed:', 'dienten, sobald zugesagt:')}`],
  [/^way out, (?:second best|else): track (.+)$/, (_, rest) => `Abflug, zweitbester: Kurs ${way(rest)}`],
  [/^way out, next to tracks (.+?): (.+)$/, (_, tracks, rest) => `Abflug, neben Kursen ${part(tracks)}: ${way(rest)}`],
  [/^way out, tracks (.+?): (.+)$/, (_, tracks, rest) => `Abflug, Kurse ${part(tracks)}: ${way(rest)}`],
  [/^(\d+° off the wind|straight into the wind)(.*); (straight into it: |on track )(.+)$/, (all) => way(all)],
  [/^tracks (.+?): (let go there .+|crosswind .+)$/, (_, tracks, rest) => `Kurse ${part(tracks)}: ${way(rest)}`],
  [/^tracks (.+): passes (.+)$/, 'Kurse $1: kommen an $2 vorbei'],
  [/^tracks (.+): no room, (.+)$/, 'Kurse $1: kein Raum, $2'],
  [/^tracks (.+): tailwind over (.+) in (.+) of wind$/, 'Kurse $1: Rückenwind über $2 bei $3 Wind'],
  [/^(.+) to (.+) needs this line$/, '$1 nach $2 braucht diese Leine'], [/^flies (.+) to its work$/, 'bringt $1 zur Arbeit'], [/^fuel for (.+) to (.+)$/, 'Treibstoff für $1 nach $2'],
  [/^moves for flies (.+) to its work$/, 'stellt sich um $1 zur Arbeit zu bringen'], [/^moves for (.+) to (.+)$/, 'stellt sich für $1 nach $2'], [/^people fly with the line off$/, 'Leute fliegen ohne Leine'],
  [/^a break while (\S+) to (\S+) is not ready$/, 'Pause, solange $1 nach $2 nicht bereit ist'], [/^a break before (\S+) to (\S+)$/, 'Pause vor $1 nach $2'], [/^the engine was on for long enough$/, 'der Motor lief lange genug'], [/^the engine was on for long enough; (\d+) s are kept free to shut down$/, 'der Motor lief lange genug; $1 s bleiben zum Abstellen frei'], [/^The engine runs too long without a break\.$/, 'Der Motor läuft zu lange ohne Pause.'], [/^Too little is kept free to shut down before the engine's limit\.$/, 'Vor der Grenze der Motorzeit bleibt zu wenig zum Abstellen frei.'], [/^waits: (.+) to (.+) is not ready before$/, 'wartet: $1 nach $2 ist nicht früher bereit'], [/^waits for (.+)$/, 'wartet auf $1'], [/^(\S+) to (\S+)$/, '$1 nach $2'],
  [/^Planning aid\. The flight manual, the operator's manual, the line owner, local rules and the licensed people decide\.$/, 'Planungshilfe. Flughandbuch, Betriebshandbuch, Leitungseigner, örtliche Regeln und die berechtigten Leute entscheiden.'],
  [/^reading the job$/, 'liest den Auftrag'], [/^finding the ways$/, 'sucht die Wege'], [/^making a first day$/, 'macht einen ersten Tag'], [/^ordering what is left$/, 'ordnet den Rest'], [/^bounding the flying time$/, 'schätzt die Flugzeit ab'], [/^searching the order of the day$/, 'sucht den Ablauf'], [/^writing the plan$/, 'schreibt den Plan'], [/^re-checking the plan$/, 'prüft den Plan nach'], [/^replaying the day$/, 'spielt den Tag nach'], [/^writing the files$/, 'schreibt die Dateien'], [/^waiting for its turn$/, 'wartet'], [/^done$/, 'fertig'], [/^planned$/, 'geplant und nachgeprüft'],
  [/^The guys at (.+) leave a gap of (.+?)°; they do not hold the pole in every direction\. Perhaps at (.+) true\.$/, 'Die Abspannungen an $1 lassen eine Lücke von $2°; sie halten den Mast nicht nach jeder Seite. Vielleicht bei $3 TRUE.'],
  [/^Light and large: it trails more than (.+) above (.+), ballast counted\. Refused as rigged\. Perhaps it flies so: (.*)\. A drogue stops it from turning, but trails farther\.$/, (_, angle, speed, how) => `Leicht und groß: über ${speed} schleppt sie mehr als ${angle}, Ballast eingerechnet. So angeschlagen verweigert. Vielleicht fliegt sie so: ${remedies(how)}. Ein Bremsschirm hindert sie am Drehen, schleppt aber weiter.`],
  [/^Each weather row is held until the next\. On a rising wind this is optimistic\.$/, 'Jede Wetterzeile gilt bis zur nächsten. Bei zunehmendem Wind ist das zu günstig.'],
  [/^Temperatures are taken (.+) colder for each 100 m\. In a morning inversion it is warmer on the ridge, so there is less lift\.$/, 'Temperaturen werden je 100 m $1 kälter angenommen. Bei Inversion am Morgen ist es am Grat wärmer, also trägt es weniger.'],
  [/^With the line (.+) or a shorter one no heading has room: (.+) on the worst\. A longer one is used\.$/, (_, line, what) => `Mit der Leine ${line} oder einer kürzeren hat keine Richtung Raum: ${part(what)} in der schlechtesten. Eine längere wird genommen.`],
  [/^With the wind from (.+) the last part straight into it would pass (.+): refused, another way in is chosen\.$/, 'Bei Wind aus $1 käme das letzte Stück gerade dagegen an $2 vorbei: verweigert, ein anderer Anflug wird genommen.'],
  [/^Whoever refuels at (.+) is the only one there trained to hook: the hook-up waits until (.+) minutes after refuelling\.$/, 'Wer an $1 tankt, ist der Einzige dort, der einhängen darf: das Einhängen wartet bis $2 Minuten nach dem Tanken.'],
  [/^A turn is tighter than the planned bank allows: at (.+) it takes (.+)\. Planned as a stop and a turn on the spot\.$/, 'Eine Kurve ist enger, als die geplante Querlage erlaubt: bei $1 braucht sie $2. Geplant als Halt und Drehen auf der Stelle.'],
  [/^(.+) the place lies in the lee of higher ground: expect downdraught and turbulence\. An estimate from the terrain; no figure of the plan allows for it\.$/, (_, when) => `${part(when)} liegt der Ort im Lee höheren Geländes: Abwind und Turbulenz erwarten. Eine Schätzung aus dem Gelände; keine Zahl des Plans rechnet damit.`],
  [/^The ground stands up behind these places and falls towards the wind: (.+)\. With (.+) or more expect updraught on the way in\. An estimate from the terrain\.$/, 'Hinter diesen Orten steigt der Boden, gegen den Wind fällt er: $1. Ab $2 Aufwind im Anflug erwarten. Eine Schätzung aus dem Gelände.'],
  [/^Straight into the wind the way in faces the sun: (.+?)\. (?:Nobody flies there then\. )?(?:.*)Clouds may hide it\.$/, (all, when) => `Gerade gegen den Wind führt der Anflug in die Sonne: ${when.replace(/ to /g, ' bis ').replace(/on track/g, 'auf Kurs').replace(/the sun up to (\S+) high/g, 'Sonne bis $1 hoch').replace(/track (\S+) is taken instead/g, 'stattdessen Kurs $1')}.${all.includes('Nobody flies') ? ' Dann fliegt dort niemand.' : ''} Wolken können sie verdecken.`],
  [/^A guy at (.+) may pull (.+) in a gust of (.+) with a lean of (.+); one person holds (.+?)\. Belay it on its anchor, or keep the machine loaded\. So at (.+) poles; this is the hardest\.$/, 'Eine Abspannung an $1 kann in einer Böe von $3 bei $4 Neigung mit $2 ziehen; eine Person hält $5. Am Anker belegen oder die Maschine belastet lassen. So an $6 Masten; dieser ist der schwerste.'],
  [/^Only (.+) hang at the end of the line of (.+)\. One of (.+) with less than (.+) in all has gone into a tail rotor: keep to the speed of the empty line\.$/, 'Nur $1 hängen am Ende der Leine von $2. Eine von $3 mit weniger als $4 im Ganzen ist in einen Heckrotor geraten: das Tempo der leeren Leine halten.'],
  [/^Below (.+) of airspeed come down no faster than (.+); a tailwind takes from the airspeed\. (?:.*)$/, 'Unter $1 Fahrt nicht schneller sinken als $2; Rückenwind nimmt von der Fahrt.'],
  [/^Nobody has confirmed (.+) today, last on (.+) by (.+); nothing planned comes near\.$/, 'Heute hat niemand $1 bestätigt, zuletzt am $2 ($3); nichts Geplantes kommt nahe.'],
  [/^Of all ways (.+) comes nearest to what this wire needs: (.+) from anywhere it can hang, and what is left is less than its position may be off\. (?:.*)$/, 'Von allen Wegen kommt $1 dem am nächsten, was diese Leitung braucht: $2 von überall, wo sie hängen kann; was bleibt, ist weniger, als ihre Lage falsch sein kann. Der Leitungseigner entscheidet.'],
  [/^Let go over (.+) of this way (\S+) \((.+)\) does not come to rest by friction but runs to the valley\. So it is on (.+) ways with loads of this shape\.$/, 'Auf $1 dieses Weges abgeworfen, bleibt $2 nicht liegen, sondern läuft ins Tal. So auf $4 Wegen mit Lasten dieser Form.'],
  [/^(.+): no room in the day\.?$/, '$1: kein Platz im Tag.'],
  [/^planned, not flown$/, 'geplant, nicht geflogen'], [/^left out of the plan$/, 'im Plan ausgelassen'], [/^lifted; not set down and called free by two people$/, 'gehoben; nicht von zweien abgesetzt und frei gemeldet'],
  [/^Take-offs or engine starts were not tapped: (.+)$/, 'Starts oder Motorstarts wurden nicht gemeldet: Stunden, Landungen und was danach verrechnet wird sind zu klein.'],
  [/^(\d+°) off the wind \((.+)\); straight into it: (.+)$/, (_, off, what, straight) => `${off} neben dem Wind (${part(what)}); gerade dagegen: ${part(straight)}`],
  [/^guying (.+) quicker$/, 'Abspannen $1 schneller'], [/^everybody begins (.+) earlier$/, 'alle beginnen $1 früher'], [/^places ready (.+) sooner after the bag$/, 'Orte $1 früher bereit nach dem Sack'], [/^a second line laid out: line changes in half the time$/, 'eine zweite Leine liegt bereit: Leinenwechsel in halber Zeit'], [/^crew (.+) ready on time$/, 'Trupp $1 rechtzeitig bereit'], [/^somebody else refuels at (.+)$/, 'jemand anderes tankt an $1'], [/^refuelling in half the time$/, 'Tanken in halber Zeit'],
  [/^waits: flying (\S+) is not ready before; (.+)$/, (_, team, reason) => `wartet: der Flug von ${team} ist nicht früher bereit; ${why(reason)}`], [/^waits: the day is not ready before; (.+)$/, (_, reason) => `wartet: der Tag ist nicht früher bereit; ${why(reason)}`],
  [/^waits: (\S+) to (\S+) is not ready before; (.+)$/, (_, load, place, reason) => `wartet: ${load} nach ${place} ist nicht früher bereit; ${why(reason)}`],
  [/^(\S+) to (\S+): (as soon as .+)$/, (_, load, place, reason) => `${load} nach ${place}: ${why(reason)}`],
  [/^fuel for flying (.+)$/, 'Treibstoff, um $1 zu fliegen'], [/^(\S+): out on track (\d+°), (\d+°) off the wind; on (\d+°) the leg would pass over (.+)$/, '$1: hinaus auf Kurs $2, $3 neben dem Wind; auf $4 käme der Weg über $5'],
  // How a value came about: what went into it, and how.
  [/^elevation of (.+)$/, 'Höhe von $1'], [/^temperature at (.+)$/, 'Temperatur in $1'], [/^exposure of (.+)$/, 'Windlage von $1'], [/^pressure altitude$/, 'Druckhöhe'], [/^QNH$/, 'QNH'],
  [/^hover mass$/, 'Schwebemasse'], [/^empty machine$/, 'leere Maschine'], [/^pilot$/, 'Pilot'], [/^line$/, 'Leine'], [/^loads$/, 'Lasten'], [/^loads \+ line$/, 'Lasten + Leine'], [/^ballast$/, 'Ballast'], [/^margins$/, 'Zuschläge'],
  [/^(\S+), weighed$/, '$1, gewogen'], [/^(\S+), estimated$/, '$1, geschätzt'], [/^fuel read at hook-up$/, 'Treibstoff beim Anhängen, abgelesen'], [/^margin for construction and estimated masses$/, 'Zuschlag für Bau und geschätzte Massen'],
  [/^empty machine \+ pilot \+ line \+ loads \+ margins \+ fuel$/, 'leere Maschine + Pilot + Leine + Lasten + Zuschläge + Treibstoff'],
  [/^table, linear between its points, rounded down; against empty machine \+ pilot \+ line \+ loads \+ margins \+ fuel$/, 'Tabelle, linear zwischen ihren Punkten, abgerundet; gegen leere Maschine + Pilot + Leine + Lasten + Zuschläge + Treibstoff'],
  [/^(\S+) to (\S+) m, (\S+) to (\S+) °C: (.+)$/, '$1 bis $2 m, $3 bis $4 °C: $5'],
  [/^rotor clearance$/, 'Abstand des Rotors'], [/^trees and rise behind the tail$/, 'Bäume und Anstieg hinter dem Heck'], [/^load standing under it$/, 'Last, die darunter steht'],
  [/^trees \+ rotor clearance \+ rise of the ground behind the tail at (.+)$/, 'Bäume + Abstand des Rotors + Anstieg des Bodens hinter dem Heck in $1'],
  [/^forecast times exposure$/, 'Vorhersage mal Windlage'], [/^\(gust - mean\) times exposure$/, '(Böe − Mittel) mal Windlage'], [/^mean wind of the forecast$/, 'mittlerer Wind der Vorhersage'], [/^gust of the forecast$/, 'Böe der Vorhersage'],
  [/^as stated by rules$/, 'wie in den Regeln angegeben'], [/^as stated by rigging: (.+)$/, 'wie bei den Anschlagmitteln angegeben: $1'],
];
