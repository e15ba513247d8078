// Sentences of the server in German, by their shape; the values stand where they stood. A shape that is not
// here stays English on the page, and is marked so for those who hear it read.
import { recheck } from './de-recheck.js';
import { ahead } from './de-ahead.js';
import { faults } from './de-faults.js';
import { versions } from './de-versions.js';

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

/** What a tap that came too soon leaves of what lay before it. */
const UNDONE = [
  [/^Counted as not done: (.+)\.$/, (_, list) => `Als nicht getan zählt: ${list.split(', ').map((one) => STEPS.reduce((said, [from, to]) => said.replace(from, to), one)).join(', ')}.`],
  [/^Its stops count as shorter, with no more fuel than there was time for\. Perhaps tell what the gauge reads\.$/, 'Ihre Halte zählen als kürzer, mit nicht mehr Treibstoff, als dafür Zeit war. Vielleicht melden, was die Anzeige sagt.'],
  [/^Its stops count as shorter\.$/, 'Ihre Halte zählen als kürzer.'],
  [/^One tap is wrong, or the machine was quicker than its ways\.$/, 'Eine Meldung stimmt nicht, oder die Maschine war schneller als ihre Wege.'],
];
const STEPS = [
  [/^crew (\S+) flown to (\S+)$/, 'Trupp $1 nach $2 geflogen'], [/^the way to (\S+)$/, 'der Weg nach $1'], [/^fuel at (\S+)$/, 'Tanken an $1'], [/^the line at (\S+)$/, 'die Leine an $1'], [/^a break at (\S+)$/, 'eine Pause an $1'],
];
const undone = (text) => UNDONE.reduce((said, [from, to]) => said.replace(from, to), text);

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

/** Names in a row, the last of them counted only. */
const names = (text) => text.replace(/ and (\S+) more\b/g, ' und $1 weitere');

/** What would open a way, one of several or several together. */
const OPENERS = [
  [/\ban agreement to cross a wire at another angle/g, 'eine Absprache, eine Leitung in einem anderen Winkel zu queren'], [/\ban agreement to cross (\S+)/g, 'eine Absprache, $1 zu queren'], [/\ba guard at (\S+)/g, 'ein Posten an $1'], [/\bnobody at (\S+) and its owner's word/g, 'niemand an $1 und die Zusage des Eigners'],
  [/\ba survey that shows (\S+) to be lower or elsewhere/g, 'eine Vermessung, nach der $1 niedriger oder anderswo ist'], [/\ba permission for zone (\S+)/g, 'eine Erlaubnis für die Zone $1'], [/\ba permission for (\S+)/g, 'eine Erlaubnis für $1'], [/\ba day after (\S+), when (\S+) is open again/g, 'ein Tag nach $1, wenn $2 wieder offen ist'],
  [/\banother place, further from what could be hit/g, 'ein anderer Ort, weiter von dem, was getroffen werden könnte'], [/\banother place, further from what is in the way/g, 'ein anderer Ort, weiter von dem, was im Weg ist'], [/\banother day with another wind/g, 'ein anderer Tag mit anderem Wind'], [/\ba terrain file that reaches further/g, 'ein Geländeraster, das weiter reicht'],
  [/\bthe laydown (.+?), from which the ground is open/g, 'der Ladeplatz $1, von dem aus der Boden offen ist'], [/( together)?, and then another look: more may come into reach/g, (_, together) => `${together ? ' zusammen' : ''}, und dann noch einmal nachsehen: mehr kann in Reichweite kommen`],
];
const openers = (text) => OPENERS.reduce((said, [from, to]) => said.replace(from, to), names(text)).replace(/ or /g, ' oder ').replace(/ and /g, ' und ');
const perhaps = (text) => (text ? ` Vielleicht ${openers(text)}.` : '');

/** What closes the ground between two places. */
const CLOSED = [
  [/^(\S+) itself lies within what must be kept off (.+)$/, '$1 liegt selbst in dem, was von $2 freizuhalten ist'], [/^each of (.+) closes it; one opened is enough$/, 'jedes von $1 schließt ihn; eines zu öffnen genügt'], [/^(.+) alone closes it$/, '$1 allein schließt ihn'], [/^(.+) closes it$/, '$1 schließt ihn'],
  [/^(.+) close it together; all of them must be opened$/, '$1 schließen ihn zusammen; alle müssen geöffnet werden'], [/^(.+) and others close it together; no few of them open it$/, '$1 und andere schließen ihn zusammen; wenige davon öffnen ihn nicht'], [/^in plan the ground is open$/, 'im Grundriss ist der Boden offen'],
];
const closed = (text) => CLOSED.reduce((said, [from, to]) => said.replace(from, to), names(text));

/** Why no way was found on open ground. */
const LADEN = { 'with the load': 'mit der Last', 'back with the empty line': 'zurück mit der leeren Leine' };
const laden = (text) => LADEN[text] ?? text;
const REFUSED = [
  [/^let go near (.+?) (with the load|back with the empty line|\S+) it could hit (.+?)(?:, on every way that was tried (\S+) of them or more)?$/, (_, at, how, what, fewest) => `was nahe ${at.replace(' or ', ' oder ')} ${laden(how)} abgeworfen wird, könnte ${names(what)} treffen${fewest ? `, auf jedem versuchten Weg mindestens ${fewest} davon` : ''}`],
  [/^the terrain file has no heights under a part of the ways near (.+?) (with the load|back with the empty line|\S+), or where a load let go there would fall$/, (_, at, how) => `das Geländeraster hat keine Höhen unter einem Teil der Wege nahe ${at.replace(' or ', ' oder ')} ${laden(how)}, oder dort, wo Abgeworfenes hinfiele`],
  [/^the wind on the way (.+) is too strong$/, (_, how) => `der Wind auf dem Weg ${laden(how)} ist zu stark`],
  [/^the ground is open, but wires are crossed at no allowed angle or a first or last part ends in a pocket \((.+)\)$/, (_, how) => `der Boden ist offen, aber Leitungen würden in keinem erlaubten Winkel gequert, oder ein erster oder letzter Teil endet in einer Sackgasse (${laden(how)})`],
];
const refused = (text) => text.split('; ').map((one) => REFUSED.reduce((said, [from, to]) => said.replace(from, to), one)).join('; ');

/** Loads or lifts that were to go somewhere. */
const lifted = (text) => text.replace(/ to /g, ' nach ');

/** A change in time. */
const shifted = (by) => (by === 'later' ? 'später' : 'früher');

/** What comes near a wire or a mast. */
const NEAR = [[/^nothing planned comes near$/, 'nichts Geplantes kommt nahe'], [/^(.+) passes it$/, '$1 kommt daran vorbei'], [/^(.+) passes (\S+ m) away$/, '$1 kommt in $2 daran vorbei'], [/^(.+) is (\S+ m) away$/, '$1 ist $2 entfernt']];
const near = (text) => NEAR.reduce((said, [from, to]) => said.replace(from, to), text);

/** How the wind is told. */
const GAUGES = { gust: 'Böe', 'gust less mean wind': 'Böe über Mittel', 'mean wind': 'Mittel' };
const over = (text) => text.replace(/ on the ways from (\S+) to /, ' auf den Wegen von $1 nach ');

export const says = [
  [/^As listed: (.+)\. No plan approves it: papers, packing and the operator's approval come first, and an exemption where nobody receives it\. Nothing rides with it\.$/, 'Laut Liste: $1. Kein Plan genehmigt es: Papiere, Verpackung und die Genehmigung des Betreibers kommen zuerst, und eine Ausnahme, wo niemand es annimmt. Nichts hängt mit daran.'],
  [/^A line of (\S+ \S+) hangs there; this load was planned on a line of (\S+ \S+)\.$/, 'Dort hängt eine Leine von $1; geplant ist diese Last an einer Leine von $2.'],
  // What a crew does at its place.
  [/^stays$/, 'bleibt'], [/^works and waits$/, 'arbeitet und wartet'], [/^walks to (\S+)$/, 'geht zu Fuß nach $1'], [/^flown to (\S+)$/, 'wird nach $1 geflogen'],
  // Whoever answers for a finding says why in a language of their own.
  [/^(.+) OVERRIDDEN by (.+?) on (\S+): (.*)$/s, (_, finding, who, when, reason) => `${german(finding)} ÜBERGANGEN von ${who} am ${when}: ${reason}`],
  [/^Nobody is landed at a site, level as this one is: loads come down here\. Perhaps a place of kind landing beside it, with a way on foot\.$/, 'An einem Platz wird niemand abgesetzt, so eben dieser ist: hier kommen Lasten herunter. Vielleicht ein Landeplatz (kind landing) daneben, mit einem Weg zu Fuß.'],
  [/^No day was found in which it fits: wind, light, crews, fuel or duty end first\. This is a search's answer, not a proof\.$/, 'Kein Tag wurde gefunden, in den sie passt: Wind, Tageslicht, Trupps, Treibstoff oder Dienstzeit enden vorher. Das ist die Antwort einer Suche, kein Beweis.'],
  [/^No day was found in which it fits: wind, light, crews, fuel or duty end first\. No place keeps fuel that somebody there may fill: what is aboard in the morning is all there is\. This is a search's answer, not a proof\.$/, 'Kein Tag wurde gefunden, in den sie passt: Wind, Tageslicht, Trupps, Treibstoff oder Dienstzeit enden vorher. Nirgends liegt Treibstoff, den dort jemand füllen darf: es gibt nur, was am Morgen im Tank ist. Das ist die Antwort einer Suche, kein Beweis.'],
  [/^No crew that may do the work can come there, on foot or by air\. Perhaps another crew, another place to land, or somebody who stays there\.$/, 'Kein Trupp, der die Arbeit tun darf, kommt dorthin, zu Fuß oder durch die Luft. Vielleicht ein anderer Trupp, ein anderer Landeplatz, oder jemand, der dort bleibt.'],
  [/^No crew that may (hook|receive|receive and guy) can come to (\S+), on foot or by air\. Perhaps such a crew that serves it, a landing place with a way on foot to it, or somebody who stays there\.$/, (_, does, place) => `Kein Trupp, der ${{ hook: 'anhängen', receive: 'empfangen', 'receive and guy': 'empfangen und abspannen' }[does]} darf, kommt nach ${place}, zu Fuß oder durch die Luft. Vielleicht ein solcher Trupp, der den Platz bedient, ein Landeplatz mit einem Fußweg dorthin, oder jemand, der dort bleibt.`],
  [/^Whoever may (hook|receive|receive and guy) can be at (\S+) only when the wind has closed it or the day is over\. Perhaps such a crew that comes earlier\.$/, (_, does, place) => `Wer ${{ hook: 'anhängen', receive: 'empfangen', 'receive and guy': 'empfangen und abspannen' }[does]} darf, kann erst an ${place} sein, wenn der Wind sie schließt oder der Tag vorbei ist. Vielleicht ein solcher Trupp, der früher kommt.`],
  [/^Nobody who stays at (\S+) may receive\. Perhaps a crew that starts and stays there, with the role receive\.$/, 'Niemand, der an $1 bleibt, darf empfangen. Vielleicht ein Trupp, der dort beginnt und bleibt, mit der Rolle receive.'],
  [/^Nobody who stays at (\S+) hooks it on, so one crew would have to come there and another to (\S+), on foot or by air; no two can\. Perhaps somebody who stays at \S+, with the role hook and without guy\.$/, 'Niemand, der an $1 bleibt, hängt sie an; also müsste ein Trupp dorthin kommen und ein anderer nach $2, zu Fuß oder geflogen; es gibt keine zwei, die können. Vielleicht jemand, der an $1 bleibt, mit der Rolle hook und ohne guy.'],
  [/^(\S+), which must come before it, is left out\.$/, '$1 muss vor ihr kommen und bleibt liegen.'],
  [/^(\S+) has left (\S+) as the last thing there; nothing is brought there any more\. If it is still worked there, state its kind as not last at its place\.$/, '$1 hat $2 als Letztes verlassen; dorthin wird nichts mehr gebracht. Wird dort noch gearbeitet, die Art von $1 als nicht letzte am Platz angeben.'],
  [/^It waits for itself: (.+)\. Mend what must come before what\.$/, (_, waits) => `Sie wartet auf sich selbst: ${waits.replace(/(\S+) comes after (\S+)/g, '$1 kommt nach $2').replace(/(\S+) leaves (\S+) after (\S+)/g, '$1 verlässt $2 nach $3').replace(/(\S+) makes ready for (\S+)/g, '$1 macht den Platz bereit für $2')}. Bessern, was vor was kommen muss.`],
  [/^as the files state it$/, 'wie die Dateien es sagen'], [/^all that lies at (\S+) lies at (\S+)$/, 'was an $1 liegt, liegt an $2'], [/^line (.+) alone$/, 'nur mit der Leine $1'], [/^flown by (.+)$/, 'geflogen von $1'],
  [/^the owner of (\S+) agrees to its use$/, '$1 wird zugesagt'], [/^(\S+) stands at (\S+)$/, '$1 steht an $2'], [/^fuel stays at (\S+)$/, 'der Treibstoff bleibt an $1'], [/^a minute costs what one of (.+) costs$/, 'eine Minute kostet so viel wie bei $1'],
  [/^The wind is just within the limit of this load: (gust less mean wind|gust|mean wind)(.*?)\. Ask for it again before the lift\.$/, (_, gauge, at) => `Der Wind liegt nur knapp innerhalb der Grenze dieser Last: ${GAUGES[gauge]}${at.replace(' at ', ' an ')}. Vor dem Heben noch einmal fragen.`],
  [/^The zone (.+) begins (.+) away, nearer than a last part is long\. Mind it on the way in and out\.$/, 'Die Zone $1 beginnt in $2 Entfernung, näher als ein Endteil lang ist. Beim Weg hinein und hinaus beachten.'],
  [/^(.+) at (.+) is not trained to hook and is not counted for it\.$/, '$1 bei $2 ist nicht zum Anhängen ausgebildet und zählt dafür nicht.'],
  [/^Nobody who stays at its pick-up is trained to hook\. Perhaps a loader there\.$/, 'Niemand, der am Aufnahmeplatz bleibt, ist zum Anhängen ausgebildet. Vielleicht ein Lader dort.'],
  [/^Nobody who stays at its pick-up (\S+) may hook\. Perhaps a crew that starts and stays there, with the role hook\.$/, 'Niemand, der am Aufnahmeplatz $1 bleibt, darf anhängen. Vielleicht ein Trupp, der dort beginnt und bleibt, mit der Rolle hook.'],
  [/^The mass is estimated; planned with (.+) for lift\. Weigh it before it flies\.$/, 'Die Masse ist geschätzt; geplant wird mit $1. Vor dem Flug wägen.'],
  [/^No mass is stated\. It stays behind until it is weighed\.(?: As a pole of this size and wood it weighs (\S+) to (\S+ kg), its fittings on top\.)?$/, (_, least, most) => `Keine Masse angegeben. Bleibt da, bis gewogen ist.${least ? ` Ein Mast dieser Größe aus diesem Holz wiegt ${least} bis ${most}, Beschläge dazu.` : ''}`],
  [/^The largest gap between guys is (.+?)°\. The pole falls into the gap: guys only pull\. These would hold: (.+)\.$/, 'Die größte Lücke zwischen Abspannungen ist $1°. In sie fällt der Mast: Abspannungen ziehen nur. Diese hielten: $2.'],
  [/^With the lightest line (.+) hang on the hook, which may carry (.+?)\. Perhaps (?:it can be split|(a machine with a stronger hook))\.$/, (_, hang, may, pole) => `Mit der leichtesten Leine hängen ${hang} am Haken, der ${may} tragen darf. Vielleicht ${pole ? 'eine Maschine mit stärkerem Haken' : 'lässt sie sich teilen'}.`],
  [/^Light for its size: add (.+) of ballast and fly it at no more than (.+)\.$/, 'Leicht für ihre Größe: $1 Ballast dazu und nicht schneller als $2.'],
  [/^At the best hour it lifts with at most (.+) of fuel; the trip with reserve and contingency needs (.+?)\. Perhaps (?:it can be split|(on a cooler day, from nearer by or with a stronger machine))\.$/, (_, most, needs, pole) => `Zur besten Stunde hebt sie mit höchstens ${most} Treibstoff; der Flug mit Reserve braucht ${needs}. Vielleicht ${pole ? 'an einem kühleren Tag, von näher her oder mit einer stärkeren Maschine' : 'lässt sie sich teilen'}.`],
  [/^It cannot be lifted with any fuel, at no hour(?:: with none aboard it is still (.+) too heavy)?; the trip with reserve and contingency needs (.+?)\. Perhaps (?:it can be split|(on a cooler day, from nearer by or with a stronger machine))\.$/, (_, over, needs, pole) => `Sie lässt sich zu keiner Stunde heben, mit gar keinem Treibstoff${over ? `: auch mit leerem Tank ist sie um ${over} zu schwer` : ''}; der Flug mit Reserve braucht ${needs}. Vielleicht ${pole ? 'an einem kühleren Tag, von näher her oder mit einer stärkeren Maschine' : 'lässt sie sich teilen'}.`],
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
  [/^Fuel was not read before a refuelling, so what was taken is not known\. It is not in the sums\.$/, 'Vor einem Tanken wurde der Treibstoff nicht gelesen; wie viel getankt wurde, ist nicht bekannt. In den Summen fehlt es.'],
  [/^With the line (.+) on heading (.+) the (\S+) is near to (trees|\S+): what is not known comes to (.+)\.$/, (_, line, heading, what, to, m) => `Mit der Leine ${line} auf ${heading} kommt (${part(what)}) nahe an ${{ trees: 'Bäume', ground: 'Boden', wire: 'Leitung' }[to] ?? to}: ungewiss sind ${m}.`],
  [/^The straight way (.+) passes (.+) too near; refused, the way goes round it\.$/, 'Der gerade Weg $1 kommt $2 zu nahe; verweigert, der Weg führt herum.'],
  [/^Loads pass over (.+) by agreement, near a right angle and high above it; letting go is no option there\. The line owner decides\.$/, (_, what) => `Lasten queren ${over(what)} nach Absprache, fast im rechten Winkel und hoch darüber; abwerfen geht dort nicht. Der Leitungseigner entscheidet.`],
  [/^Loads pass over (.+): only while it is guarded\. Perhaps another laydown avoids it\.$/, (_, what) => `Lasten queren ${over(what)}: nur solange bewacht. Vielleicht vermeidet es ein anderer Ladeplatz.`], [/^Loads pass over (.+)\.$/, (_, what) => `Lasten queren ${over(what)}.`],
  [/^With (.+) there is no spot for (.+) s where it may be let go without a guard: it would come down on (.+)\.$/, 'Mit $1 gibt es $2 s lang keine Stelle, an der ohne Posten abgeworfen werden darf: sie käme auf $3 herunter.'],
  [/^For (.+) s no agreed release area lies below or within (\S+) s of flight\. (.+) would serve once the owner agrees\.$/, '$1 s lang liegt keine zugesagte Abwurffläche darunter oder innerhalb von $2 s Flug. $3 diente, sobald der Eigner zusagt.'],
  [/^For (.+) s no agreed release area lies below or within (\S+) s of flight\. No other area is named there; perhaps one can be agreed\.$/, '$1 s lang liegt keine zugesagte Abwurffläche darunter oder innerhalb von $2 s Flug. Keine andere ist dort benannt; vielleicht lässt sich eine zusagen.'],
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
  [/^tracks (.+): passes (.+)$/, (_, tracks, rest) => `Kurse ${part(tracks)}: kommen an ${rest} vorbei`],
  [/^tracks (.+): no room, (.+)$/, 'Kurse $1: kein Raum, $2'],
  [/^tracks (.+): tailwind over (.+) in (.+) of wind$/, 'Kurse $1: Rückenwind über $2 bei $3 Wind'],
  [/^(.+) to (.+) needs this line$/, '$1 nach $2 braucht diese Leine'], [/^flies (.+) to its work$/, 'bringt $1 zur Arbeit'], [/^fuel for (.+) to (.+)$/, 'Treibstoff für $1 nach $2'],
  [/^moves for flies (.+) to its work$/, 'stellt sich um $1 zur Arbeit zu bringen'], [/^moves for (.+) to (.+)$/, 'stellt sich für $1 nach $2'], [/^people fly with the line off$/, 'Leute fliegen ohne Leine'],
  [/^a break while (\S+) to (\S+) is not ready$/, 'Pause, solange $1 nach $2 nicht bereit ist'], [/^a break before (\S+) to (\S+)$/, 'Pause vor $1 nach $2'], [/^the engine was on for long enough$/, 'der Motor lief lange genug'], [/^the engine was on for long enough; (\d+) s are kept free to shut down$/, 'der Motor lief lange genug; $1 s bleiben zum Abstellen frei'], [/^The engine runs too long without a break\.$/, 'Der Motor läuft zu lange ohne Pause.'], [/^Too little is kept free to shut down before the engine's limit\.$/, 'Vor der Grenze der Motorzeit bleibt zu wenig zum Abstellen frei.'], [/^waits: (.+) to (.+) is not ready before$/, 'wartet: $1 nach $2 ist nicht früher bereit'], [/^waits for (.+)$/, 'wartet auf $1'], [/^(\S+) to (\S+)$/, '$1 nach $2'],
  [/^Planning aid\. The flight manual, the operator's manual, the line owner, local rules and the licensed people decide\.$/, 'Planungshilfe. Flughandbuch, Betriebshandbuch, Leitungseigner, örtliche Regeln und die berechtigten Leute entscheiden.'],
  [/^looking for loads to leave for another day$/, 'sucht Lasten für einen anderen Tag'], [/^reading the job$/, 'liest den Auftrag'], [/^finding the ways$/, 'sucht die Wege'], [/^making a first day$/, 'macht einen ersten Tag'], [/^ordering what is left$/, 'ordnet den Rest'], [/^bounding the flying time$/, 'schätzt die Flugzeit ab'], [/^searching the order of the day$/, 'sucht den Ablauf'], [/^writing the plan$/, 'schreibt den Plan'], [/^re-checking the plan$/, 'prüft den Plan nach'], [/^replaying the day$/, 'spielt den Tag nach'], [/^writing the files$/, 'schreibt die Dateien'], [/^waiting for its turn$/, 'wartet'], [/^done$/, 'fertig'], [/^planned$/, 'geplant und nachgeprüft'],
  [/^The guys at (.+) leave a gap of (.+?)°; they do not hold the pole in every direction\. Perhaps at (.+) true\.$/, 'Die Abspannungen an $1 lassen eine Lücke von $2°; sie halten den Mast nicht nach jeder Seite. Vielleicht bei $3 TRUE.'],
  [/^Light and large: it trails more than (.+) above (.+), ballast counted\. Refused as rigged\. Perhaps it flies so: (.*?)(\. A drogue stops it from turning, but trails farther)?\.$/, (_, angle, speed, how, drogue) => `Leicht und groß: über ${speed} schleppt sie mehr als ${angle}, Ballast eingerechnet. So angeschlagen verweigert. Vielleicht fliegt sie so: ${remedies(how)}.${drogue ? ' Ein Bremsschirm hindert sie am Drehen, schleppt aber weiter.' : ''}`],
  [/^Each weather row is held until the next\. On a rising wind this is optimistic\.$/, 'Jede Wetterzeile gilt bis zur nächsten. Bei zunehmendem Wind ist das zu günstig.'],
  [/^Temperatures are taken (.+) colder for each 100 m\. In a morning inversion it is warmer on the ridge, so there is less lift\.$/, 'Temperaturen werden je 100 m $1 kälter angenommen. Bei Inversion am Morgen ist es am Grat wärmer, also trägt es weniger.'],
  [/^With the line (.+) or a shorter one no heading has room: (.+) on the worst\. A longer one is used\.$/, (_, line, what) => `Mit der Leine ${line} oder einer kürzeren hat keine Richtung Raum: ${part(what)} in der schlechtesten. Eine längere wird genommen.`],
  [/^With the wind from (.+) the last part straight into it would pass (.+): refused, another way in is chosen\.$/, 'Bei Wind aus $1 käme das letzte Stück gerade dagegen an $2 vorbei: verweigert, ein anderer Anflug wird genommen.'],
  [/^Whoever refuels at (.+) is the only one there trained to hook: the hook-up waits until (.+) minutes after refuelling\.$/, 'Wer an $1 tankt, ist der Einzige dort, der einhängen darf: das Einhängen wartet bis $2 Minuten nach dem Tanken.'],
  [/^A turn is tighter than the planned bank allows: at (.+) it takes (.+)\. Planned as a stop and a turn on the spot\.$/, 'Eine Kurve ist enger, als die geplante Querlage erlaubt: bei $1 braucht sie $2. Geplant als Halt und Drehen auf der Stelle.'],
  [/^(.+) the place lies in the lee of higher ground: expect downdraught and turbulence\. An estimate from the terrain; no figure of the plan allows for it\.$/, (_, when) => `${part(when)} liegt der Ort im Lee höheren Geländes: Abwind und Turbulenz erwarten. Eine Schätzung aus dem Gelände; keine Zahl des Plans rechnet damit.`],
  [/^The ground stands up behind these places and falls towards the wind: (.+)\. With (.+) or more expect updraught on the way in\. An estimate from the terrain\.$/, 'Hinter diesen Orten steigt der Boden, gegen den Wind fällt er: $1. Ab $2 Aufwind im Anflug erwarten. Eine Schätzung aus dem Gelände.'],
  [/^Straight into the wind the way in faces the sun: (.+?)\. (?:Nobody flies there then\. )?(?:.*)Clouds may hide it\.$/, (all, when) => `Gerade gegen den Wind führt der Anflug in die Sonne: ${when.replace(/ to /g, ' bis ').replace(/on track/g, 'auf Kurs').replace(/the sun up to (\S+) high/g, 'Sonne bis $1 hoch').replace(/track (\S+) is taken instead/g, 'stattdessen Kurs $1')}.${all.includes('Nobody flies') ? ' Dann fliegt dort niemand.' : ''} Wolken können sie verdecken.`],
  [/^A guy at (.+) may pull (.+) in a gust of (.+) with a lean of (.+); one person holds (.+?)\. Belay it on its anchor, or keep the machine loaded\. So at (?:this pole|(.+) poles; this is the hardest)\.$/, (_, at, pull, gust, lean, hand, poles) => `Eine Abspannung an ${at} kann in einer Böe von ${gust} bei ${lean} Neigung mit ${pull} ziehen; eine Person hält ${hand}. Am Anker belegen oder die Maschine belastet halten. So ${poles ? `an ${poles} Masten; dies ist der schwerste` : 'an diesem Mast'}.`],
  [/^Only (.+) hang at the end of the line of (.+)\. One of (.+) with less than (.+) in all has gone into a tail rotor: keep to the speed of the empty line\.$/, 'Nur $1 hängen am Ende der Leine von $2. Eine von $3 mit weniger als $4 im Ganzen ist in einen Heckrotor geraten: das Tempo der leeren Leine halten.'],
  [/^Below (.+) of airspeed come down no faster than (.+); a tailwind takes from the airspeed\. (?:.*)$/, 'Unter $1 Fahrt nicht schneller sinken als $2; Rückenwind nimmt von der Fahrt.'],
  [/^Nobody has confirmed (.+) today, last on (.+?) by (.+?); (.+)\.$/, (_, what, on, by, how) => `Heute hat niemand ${what} bestätigt, zuletzt am ${on} (${by}); ${near(how)}.`], [/^Nobody has looked at (.+) yet; (.+)\.$/, (_, what, how) => `Noch niemand hat ${what} angesehen; ${near(how)}.`],
  [/^Of all ways (.+?)(?:, empty,| with (.+?)) comes nearest to what this wire needs: (.+) from anywhere it can hang(, and what is left is less than its position may be off)?\.(?: Its voltage( is not stated, so the largest class)? counts by the (.+)\.)?$/, (_, name, load, least, close, unstated, rule) => `Von allen Wegen kommt ${name} ${load ? `mit ${load}` : '(leer)'} dem am nächsten, was diese Leitung braucht: ${least} von überall, wo sie hängen kann${close ? '; was bleibt, ist weniger, als ihre Lage falsch sein kann' : ''}.${rule ? ` ${unstated ? 'Ihre Spannung ist nicht angegeben, also zählt die größte Klasse' : 'Ihre Spannung zählt'} nach: ${rule.replace('crane table as a floor; the line owner decides', 'Krantabelle als Untergrenze; der Leitungseigner entscheidet')}.` : ''}`],
  [/^Let go over (.+) of this way (\S+) \((.+)\) does not come to rest by friction but runs to the valley\. So it is on (\S+) (ways?) with loads of this shape\.$/, (_, long, load, shape, count, ways) => `Auf ${long} dieses Weges abgeworfen, bleibt ${load} nicht liegen, sondern läuft ins Tal. So auf ${count} ${ways === 'way' ? 'Weg' : 'Wegen'} mit Lasten dieser Form.`],
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
  [/^elevation of (.+)$/, 'Höhe von $1'], [/^temperature at (.+)$/, 'Temperatur in $1'], [/^exposure of (.+)$/, 'Windlage von $1'], [/^pressure altitude$/, 'Druckhöhe'], [/^QNH$/, 'QNH'], [/^standard atmosphere$/, 'Normatmosphäre'], [/^plan$/, 'Plan'],
  [/^hover mass$/, 'Schwebemasse'], [/^empty machine$/, 'leere Maschine'], [/^pilot$/, 'Pilot'], [/^line$/, 'Leine'], [/^loads$/, 'Lasten'], [/^loads \+ line$/, 'Lasten + Leine'], [/^ballast$/, 'Ballast'], [/^margins$/, 'Zuschläge'],
  [/^(\S+), weighed$/, '$1, gewogen'], [/^(\S+), estimated$/, '$1, geschätzt'], [/^fuel read at hook-up$/, 'Treibstoff beim Anhängen, abgelesen'], [/^margin for construction and estimated masses$/, 'Zuschlag für Bau und geschätzte Massen'],
  [/^empty machine \+ pilot \+ line \+ loads \+ margins \+ fuel$/, 'leere Maschine + Pilot + Leine + Lasten + Zuschläge + Treibstoff'],
  [/^table, linear between its points, rounded down; against empty machine \+ pilot \+ line \+ loads \+ margins \+ fuel$/, 'Tabelle, linear zwischen ihren Punkten, abgerundet; gegen leere Maschine + Pilot + Leine + Lasten + Zuschläge + Treibstoff'],
  [/^(\S+) to (\S+) m, (\S+) to (\S+) °C: (.+)$/, '$1 bis $2 m, $3 bis $4 °C: $5'],
  [/^rotor clearance$/, 'Abstand des Rotors'], [/^trees and rise behind the tail$/, 'Bäume und Anstieg hinter dem Heck'], [/^load standing under it$/, 'Last, die darunter steht'],
  [/^trees \+ rotor clearance \+ rise of the ground behind the tail at (.+)$/, 'Bäume + Abstand des Rotors + Anstieg des Bodens hinter dem Heck in $1'],
  [/^forecast times exposure$/, 'Vorhersage mal Windlage'], [/^\(gust - mean\) times exposure$/, '(Böe − Mittel) mal Windlage'], [/^mean wind of the forecast$/, 'mittlerer Wind der Vorhersage'], [/^gust of the forecast$/, 'Böe der Vorhersage'],
  [/^fuel gauge spread$/, 'Streuung der Tankanzeige'], [/^as stated by rules$/, 'wie in den Regeln angegeben'], [/^as stated by rigging: (.+)$/, 'wie bei den Anschlagmitteln angegeben: $1'],
  // Why a load stays behind, or what of a place, a wire or a report is doubted.
  [/^It is left for another day\.$/, 'Sie bleibt für einen anderen Tag.'],
  [/^(\S+) was tapped as hooked ([\d.]+) min sooner than what the plan has before it can be done\. (.+)$/, (_, load, min, what) => `${load} wurde ${min} min früher als angehängt gemeldet, als getan sein kann, was der Plan davor hat. ${undone(what)}`],
  [/^nobody tapped the engine off: what was planned with the engine off counts as it was planned; tap it on and off where that matters$/, 'niemand hat das Triebwerk als abgestellt gemeldet: was mit abgestelltem Triebwerk geplant war, zählt wie geplant; an und aus melden, wo es darauf ankommt'],
  [/^No load of this job can be flown\.$/, 'Keine Last dieses Auftrags lässt sich fliegen.'], [/^It was taken off the day\.$/, 'Sie wurde vom Tag genommen.'], [/^It is not flown at that turn\.(?: (.+))?$/, (_, held) => `In dieser Reihe wird sie nicht geflogen.${held ? ` ${why(held.replace(/\.$/, ''))}.` : ''}`], [/^(\S+): in this order the day has no room for it\.$/, '$1: in dieser Reihe ist kein Platz für sie im Tag.'],
  [/^What is left of the day has no room for it: wind, light, crews, fuel or duty end first\.$/, 'Im Rest des Tages ist kein Platz für sie: Wind, Tageslicht, Trupps, Treibstoff oder Dienstzeit enden vorher.'],
  [/^It is stood up at (\S+), where nobody stays to (hook|receive) but who guys it meanwhile\. Perhaps another crew that stays there, or a kind that lies\.$/, (_, place, does) => `Er wird an ${place} aufgestellt; dort bleibt niemand, der ${does === 'hook' ? 'anhängt' : 'empfängt'}, als wer ihn dabei abspannt. Vielleicht noch ein Trupp, der dort bleibt, oder eine Art, die liegt.`],
  [/^It is stood up at (\S+), where no crew is sent and nobody stays to guy it\. Perhaps a crew that stays there, or a kind that lies\.$/, 'Er wird an $1 aufgestellt; dorthin kommt kein Trupp, und niemand bleibt dort, der ihn abspannt. Vielleicht ein Trupp, der dort bleibt, oder eine Art, die liegt.'],
  [/^No guys are planned for the pole (\S+)\.$/, 'Für den Mast $1 sind keine Abspannungen geplant.'], [/^The wind at (\S+) is over its limit all day\.$/, 'Der Wind an $1 liegt den ganzen Tag über ihrer Grenze.'],
  [/^No line in stock may carry it with the hook's limit kept\.$/, 'Keine vorhandene Leine darf sie tragen, ohne die Grenze des Hakens zu überschreiten.'],
  [/^No line in stock leaves a way in to (\S+) with room for rotor and tail\. Perhaps a longer line\.$/, 'Mit keiner vorhandenen Leine hat ein Anflug nach $1 Raum für Rotor und Heck. Vielleicht eine längere Leine.'],
  [/^The air at (\S+(?:, \S+)?) lies outside the hover table in every hour that the wind leaves\.$/, 'Die Luft an $1 liegt in jeder Stunde, die der Wind lässt, außerhalb der Schwebetabelle.'],
  [/^With it on the hook the centre of gravity leaves its limits at some fuel between the reserve and the most it lifts with\.$/, 'Mit ihr am Haken verlässt der Schwerpunkt seine Grenzen bei einem Treibstoff zwischen der Reserve und dem höchsten, mit dem sie hebt.'],
  [/^(\S+) lies in zone (\S+), where nobody (flies|hovers) lower than (.+) above ground\. Perhaps another place, or a permission\.$/, (_, place, zone, does, low) => `${place} liegt in der Zone ${zone}, in der niemand tiefer als ${low} über Grund ${does === 'flies' ? 'fliegt' : 'schwebt'}. Vielleicht ein anderer Ort oder eine Erlaubnis.`],
  [/^(\S+) is not agreed with its owner\.$/, '$1 ist vom Eigner nicht zugesagt.'], [/^(\S+) lies outside the known terrain\.$/, '$1 liegt außerhalb des bekannten Geländes.'], [/^The terrain raster says nothing about this place\.$/, 'Das Geländeraster sagt nichts über diesen Ort.'],
  [/^The override of (\S+) changes nothing\. Perhaps its finding is gone, or it is one that no reason lifts\.$/, 'Das Übergehen von $1 ändert nichts. Vielleicht gibt es den Befund nicht mehr, oder kein Grund hebt ihn auf.'],
  [/^Not used for fuel: it lies in zone (\S+), where no fuel is handled\. Perhaps another place for the fuel\.$/, 'Nicht zum Tanken benützt: liegt in der Zone $1, in der nicht getankt wird. Vielleicht ein anderer Ort für den Treibstoff.'],
  [/^People may be landed here, but (the canopy raster does not reach over all|nothing says what stands) within (\S+ m), which rotor or tail with rotor-clearance-m take\. Look, and state canopy_m and clearing_radius_m\.$/, (_, what, within) => `Hier dürfen Leute abgesetzt werden, aber ${what.startsWith('the') ? `das Raster der Bäume reicht nicht über alles innerhalb von ${within}` : `nichts sagt, was innerhalb von ${within} steht`}, die Rotor oder Heck mit rotor-clearance-m brauchen. Nachsehen, und canopy_m und clearing_radius_m eintragen.`],
  [/^A lift that is begun needs (\S+) at (\S+); it is told to be late, and taken to be there until that is done\. If it is not there, nothing may be set down\.$/, 'Ein begonnener Flug braucht $1 an $2; der Trupp ist als verspätet gemeldet und gilt bis dahin als dort. Ist er nicht dort, darf nichts abgesetzt werden.'],
  [/^With (.+) of fuel at (\S+) no way to fuel keeps the reserve\. It must go there by eye; perhaps a new order once it is refuelled\.$/, 'Mit $1 Treibstoff an $2 hält kein Weg zum Tanken die Reserve. Sie muss auf Sicht hin; vielleicht eine neue Reihenfolge, sobald getankt ist.'],
  [/^The machine is at (\S+), from where no way keeps the rules any more\. It must leave by eye; perhaps a new order once the next lift is hooked elsewhere\.$/, 'Die Maschine ist an $1, von wo kein Weg mehr die Regeln hält. Sie muss auf Sicht fort; vielleicht eine neue Reihenfolge, sobald die nächste Last anderswo angehängt ist.'],
  [/^With its anchors on the slope the guys at (\S+) do not hold the pole at the lean of the rules\.$/, 'Mit den Ankern am Hang halten die Abspannungen an $1 den Mast bei der Neigung der Regeln nicht.'],
  [/^Its (height|sag) was never measured; a default on the safe side is used\. (.+) passes it\. Look at it before flying\.$/, (_, what, way) => `${what === 'height' ? 'Ihre Höhe' : 'Ihr Durchhang'} wurde nie gemessen; gerechnet wird auf der sicheren Seite. ${way} kommt an ihr vorbei. Vor dem Flug ansehen.`],
  [/^No variation is stated; bearings that read MAG are TRUE ones\.$/, 'Keine Missweisung ist angegeben; Peilungen, die MAG heißen, sind TRUE.'],
  [/^The terrain has one height for each cell\. What rises between two of them is not seen\. Perhaps a finer raster can be had\.$/, 'Das Gelände hat eine Höhe je Zelle. Was zwischen zweien aufragt, bleibt ungesehen. Vielleicht gibt es ein feineres Raster.'],
  [/^The listed elevation is (.+), the terrain's (.+ m)\. Perhaps the place is not where the list says\.$/, 'Die Liste gibt $1 Höhe an, das Gelände $2. Vielleicht liegt der Ort nicht, wo die Liste sagt.'],
  [/^Reports give temperature and pressure only for their own time; the warmest, (.+), and the lowest pressure are held (.+)\.$/, (_, warmest, held) => `Meldungen geben Temperatur und Druck nur für ihre eigene Zeit; die höchste, ${warmest}, und der tiefste Druck gelten ${{ 'all day': 'den ganzen Tag', 'for their hour': 'für ihre Stunde' }[held] ?? held}.`],
  [/^Nothing is planned in the hours whose wind has no direction \(VRB\), from (.+)\. Perhaps enter the hours as a table, with the wind that the site has then\.$/, 'In den Stunden, deren Wind keine Richtung hat (VRB), wird nichts geplant: ab $1. Vielleicht die Stunden als Tabelle eintragen, mit dem Wind, den der Platz dann hat.'],
  [/^For a time the wind may come from elsewhere than planned \(TEMPO, PROB, a change or a report; VRB: from anywhere\), in the hours from (.+)\. Ways in are planned for the direction that prevails, with the strongest wind of all\.$/, 'Zeitweise kann der Wind von anderswo kommen als geplant (TEMPO, PROB, ein Wechsel oder eine Meldung; VRB: von überall), in den Stunden ab $1. Anflüge sind für die vorherrschende Richtung geplant, mit dem stärksten Wind von allen.'],
  [/^(.+) has no known inspection date\. Read its tag\.$/, 'Von $1 ist kein Prüfdatum bekannt. Das Schild lesen.'],
  [/^A pole of this size weighs (.+), the list says (.+ kg)\. Weigh it\. Perhaps (?:(the pole is wet, or pounds and kilograms or the sizes are mixed up)|fittings are counted in, or pounds and kilograms are mixed up)\.$/, (_, band, stated, wet) => `Ein Mast dieser Größe wiegt ${band.replace(' to ', ' bis ')}, die Liste sagt ${stated}. Wägen. Vielleicht ${wet ? 'ist der Mast nass, oder Pfund und Kilogramm oder die Maße sind verwechselt' : 'sind Beschläge mitgezählt, oder Pfund und Kilogramm sind verwechselt'}.`],
  [/^The ground falls away on all sides, so little tells the height\. Planned altitude of the hook at set-down: (.+)\. Set the altimeter to a known place, let those below call the last metres, and look the place over before first use\.$/, 'Der Boden fällt nach allen Seiten ab, wenig verrät die Höhe. Geplante Höhe des Hakens beim Absetzen: $1. Den Höhenmesser nach einem bekannten Ort stellen, die letzten Meter von unten ansagen lassen und den Ort vor dem ersten Mal ansehen.'],
  [/^An empty bag or net hangs open on the line and can fly into the tail rotor\. Take it off, or roll it up with ballast in it\.$/, 'Ein leerer Sack oder ein leeres Netz hängt offen an der Leine und kann in den Heckrotor fliegen. Abnehmen, oder mit Ballast darin einrollen.'],
  // What of the gear, a guy or a mast is near its end, and how the machine is flown for it.
  [/^Flown at (.+) instead of (.+): beyond, (line or load swings too near the tail|the line trails too far|the load trails too far or the line is not allowed)\.$/, (_, kt, full, what) => `Geflogen mit ${kt} statt ${full}: darüber ${what.startsWith('line') ? 'schwingt Leine oder Last dem Heck zu nahe' : what.endsWith('far') ? 'schleppt die Leine zu weit' : 'schleppt die Last zu weit, oder die Leine ist nicht erlaubt'}.`],
  [/^(.+): (\S+) in stock; (\S+) are needed (?:for one lift|(when none comes back in between))\.$/, (_, gear, stock, need, between) => `${gear}: ${stock} vorrätig; nötig ${between ? 'sind, wenn dazwischen keins zurückkommt,' : 'für einen Flug:'} ${need}.`],
  [/^On the legs of (.+) it turns over or slides: its centre of gravity does not hang between them\.$/, 'An den Strängen von $1 kippt oder rutscht sie: ihr Schwerpunkt hängt nicht dazwischen.'],
  [/^This (.+) hangs (\S+) off level on (.+), its (butt|top) end low; the legs pull (.+) and (.+ N)\.$/, (_, kind, tilt, set, end, one, other) => `${kind} hängt um ${tilt} schief an ${set}, das ${end === 'butt' ? 'Stamm' : 'Zopf'}ende tief; die Stränge ziehen mit ${one} und ${other}.`],
  [/^A guy at (.+) pulls (.+ N); its anchor holds (.+ N)\.$/, 'Eine Abspannung an $1 zieht mit $2; ihr Anker hält $3.'], [/^The hover over (.+) begins with (.+) to spare and burns (.+)\.$/, 'Das Schweben über $1 beginnt mit $2 Spielraum und verbraucht $3.'],
  [/^Its height (?:is not known: it counts as endlessly high|(was never measured))\. (.+)\. Look at it, and for guys, before flying\.$/, (_, measured, how) => `Seine Höhe ${measured ? 'wurde nie gemessen' : 'ist nicht bekannt: er zählt als endlos hoch'}. ${near(how)}. Vor dem Flug ansehen, auch nach Abspannungen.`],
  [/^The wind across the track is as fast as the machine: it cannot hold the track\.$/, 'Der Wind quer zum Kurs ist so schnell wie die Maschine: sie hält den Kurs nicht.'], [/^The wind against the track is as fast as the machine: it makes no way\.$/, 'Der Wind gegen den Kurs ist so schnell wie die Maschine: sie kommt nicht voran.'],
  [/^The gust in (".+") is below the mean wind\.$/, 'Die Böe in $1 liegt unter dem mittleren Wind.'], [/^The dewpoint in (".+") is above the temperature, which no air has\. Perhaps the two are swapped, or a minus \(M\) is missing\.$/, 'Der Taupunkt in $1 liegt über der Temperatur; solche Luft gibt es nicht. Vielleicht sind beide vertauscht, oder ein Minus (M) fehlt.'],
  [/^The report cannot be read: (.+)\.$/, 'Die Meldung ist nicht lesbar: $1.'], [/^Parts of a report were not understood: (.+)\.$/, 'Teile einer Meldung wurden nicht verstanden: $1.'], [/^Of what the map holds here, (\S+) things were not understood or do not matter\.$/, 'Von dem, was die Karte hier enthält, wurden $1 Dinge nicht verstanden oder zählen nicht.'],
  [/^The centre of gravity (.+) with (.+) of fuel, at (.+) and (.+)\.$/, (_, where, fuel, mass, arm) => `Der Schwerpunkt ${where.replace('lies outside the envelope', 'liegt außerhalb der Grenzen').replace('is near the edge of the envelope', 'liegt knapp an der Grenze')} mit ${fuel} Treibstoff, bei ${mass} und ${arm}.`],
  [/^The envelope does not cover (.+); it runs from (.+) to (.+)\.$/, 'Die Grenzen des Schwerpunkts gelten nicht für $1; sie reichen von $2 bis $3.'], [/^The hover table does not cover (.+), (.+); it ends at (.+) to (.+), (.+) to (.+)\.$/, 'Die Schwebetabelle gilt nicht für $1, $2; sie reicht von $3 bis $4, $5 bis $6.'],
  [/^A descent of (.+) with (.+) of airspeed (?:lies within|(comes near)) the vortex ring\. Descend slower, or keep the speed up\.$/, (_, sink, speed, nearly) => `Ein Sinken von ${sink} bei ${speed} Fahrt liegt ${nearly ? 'nahe am' : 'im'} Wirbelring. Langsamer sinken oder die Fahrt halten.`],
  [/^(.+) was due for inspection on (.+)\.$/, '$1 war am $2 zur Prüfung fällig.'], [/^(.+) is past its life since (.+)\.$/, '$1 ist seit $2 abgelaufen.'], [/^(.+) carries (.+) and may carry (.+)\.$/, '$1 trägt $2 und darf $3 tragen.'],
  [/^The pulled line hangs too far from plumb\.$/, 'Die gezogene Leine hängt zu weit vom Lot.'], [/^The line is pulled too fast\.$/, 'Die Leine wird zu schnell gezogen.'], [/^Only (.+) hang at the end of the line of (.+); at least (.+) keep it out of the tail rotor\. Hang ballast on it\.$/, 'Nur $1 hängen am Ende der Leine von $2; mindestens $3 halten sie vom Heckrotor fern. Ballast anhängen.'],
  [/^The pole falls into the gap: guys only pull\. These would hold: (.+)\.$/, 'In die Lücke fällt der Mast: Abspannungen ziehen nur. Diese hielten: $1.'], [/^A push into the gap pulls one guy with up to (\S+) times its force\.$/, 'Ein Stoß in die Lücke zieht an einer Abspannung bis zum $1-fachen seiner Kraft.'],
  [/^(.+) of (.+) is planned with (\S+ \S+) instead of (\S+ \S+), learned from (\S+) (flights?)\.$/, (_, what, whose, now, was, count, flights) => `${what} von ${whose} ist mit ${now} statt ${was} geplant, gelernt aus ${count} ${flights === 'flight' ? 'Flug' : 'Flügen'}.`],
  // What was tapped, and what stands against it.
  [/^This was tapped \((.+?)\) but (.+)\.$/, (_, kind, but) => `Gemeldet wurde ${kind}, aber ${german(but)}.`], [/^The line may not hang on the hook while people are aboard or get in\.$/, 'Solange Leute an Bord sind oder einsteigen, darf keine Leine am Haken hängen.'], [/^(\S+) was not called free by two people\. A sling that has not parted ties the machine to the load\.$/, '$1 wurde nicht von zweien frei gemeldet. Ein Geschirr, das nicht gelöst ist, bindet die Maschine an die Last.'],
  [/^The releases were not tried since this line was hung on the hook\.$/, 'Seit diese Leine am Haken hängt, wurden die Auslösungen nicht probiert.'], [/^(.+) was not trained to hook loads\.$/, '$1 war nicht zum Anhängen ausgebildet.'], [/^The load waits at (\S+), where nobody tapped it\.$/, 'Die Last wartet an $1, wo niemand etwas gemeldet hat.'],
  // Why no way leads somewhere, and what would open one.
  [/^There is no way to (\S+) that keeps the rules: (.+?)\.(?: Perhaps (.+)\.)?$/, (_, to, what, open) => `Nach ${to} führt kein Weg, der die Regeln hält: ${closed(what)}.${perhaps(open)}`],
  [/^There is no way to (\S+) that keeps the rules, at no hour and with no line in stock(?:: (.+?))?\.(?: Perhaps (.+)\.)?$/, (_, to, reasons, open) => `Nach ${to} führt zu keiner Stunde und mit keiner vorhandenen Leine ein Weg, der die Regeln hält${reasons ? `: ${refused(reasons)}` : ''}.${perhaps(open)}`],
  [/^Every last part to (\S+) would pass (.+?)\.(?: Perhaps (.+)\.)?$/, (_, to, what, open) => `Jedes letzte Stück nach ${to} käme an ${names(what)} vorbei.${perhaps(open)}`],
  [/^Where the last part to (\S+) passes nothing the wind is too much from behind or the side at every hour(?:; elsewhere it would pass (.+?))?\.(?: Perhaps (.+)\.)?$/, (_, to, what, open) => `Wo das letzte Stück nach ${to} an nichts vorbeikommt, ist der Wind zu jeder Stunde zu sehr von hinten oder von der Seite${what ? `; sonst käme es an ${names(what)} vorbei` : ''}.${perhaps(open)}`],
  ...REFUSED, [/^with the load$|^back with the empty line$/, laden], [/^(?:an agreement to cross|a guard at|nobody at \S+ and its owner|a survey that shows|a permission for|a day after|another (?:place|day)\b|a terrain file|the laydown\b|\S+(?: together)?, and then) ?.*$/, openers],
  // What a new order is made for, and what it changes.
  [/^the job's files were changed since this plan was made; the order keeps to them as they were\. Plan anew where the change must count$/, 'die Dateien des Auftrags wurden geändert, seit dieser Plan gemacht ist; die Reihenfolge hält sich an sie, wie sie waren. Neu planen, wo die Änderung zählen muss'],
  [/^loads not yet weighed count (\S+) times as listed, as the (\S+) weighed so far$/, 'noch nicht gewogene Lasten zählen das $1-fache der Liste, wie die $2 bisher gewogenen'],
  [/^(.+) was taken back$/, (_, what) => `zurückgenommen: ${german(what)}`], [/^(.+) is not counted: it was told before the files were changed$/, (_, what) => `zählt nicht, weil vor der Änderung der Dateien gemeldet: ${german(what)}`], [/^'(.*)', told by (.+), changes nothing: it names nothing of this job or cannot be read$/s, "'$1', gemeldet von $2, ändert nichts: es nennt nichts aus diesem Auftrag oder ist nicht lesbar"],
  [/^crew (.+) late until (\S+)$/, 'Trupp $1 verspätet bis $2'], [/^(\S+) closed$/, '$1 geschlossen'], [/^(\S+) added$/, '$1 dazugekommen'], [/^(\S+) taken off the day$/, '$1 vom Tag genommen'], [/^(\S+) weighed at (.+)$/, '$1 gewogen: $2'], [/^wind (\S+ min) earlier$/, 'Wind $1 früher'],
  [/^(\S+) moved (.+) towards (.+) true, no trees within (.+)$/, '$1 um $2 nach $3 TRUE verlegt, keine Bäume innerhalb von $4'], [/^something (.+) high stands (.+) from (\S+) towards (.+) true$/, 'etwas $1 Hohes steht $2 von $3 nach $4 TRUE'],
  [/^(.+) (is|are) flown after all\.$/, (_, loads, verb) => `${loads} ${verb === 'is' ? 'wird' : 'werden'} doch geflogen.`], [/^The day ends (.+ min) (earlier|later), at (\S+)\.$/, (_, by, how, at) => `Der Tag endet ${by} ${shifted(how)}, um ${at}.`],
  [/^(.+?) (stays?) behind: (.+?)(?: With it (.+)\.)?$/s, (_, loads, verb, message, waiting) => `${loads} ${verb === 'stays' ? 'bleibt' : 'bleiben'} liegen: ${german(message)}${waiting ? ` Damit auch ${waiting}.` : ''}`],
  [/^(\S+ to \S+) is (.+ min) (earlier|later), at (\S+)\.$/, (_, lift, by, how, at) => `${lifted(lift)} kommt ${by} ${shifted(how)}, um ${at}.`], [/^(.+) may be hooked with at most (.+) of fuel read, (.+) less\.$/, (_, lift, most, less) => `${lifted(lift)} darf mit höchstens ${most} abgelesenem Treibstoff angehängt werden, ${less} weniger.`],
  [/^The way of (.+) is (.+ km) long, (\S+) before\.$/, (_, lift, now, was) => `Der Weg von ${lifted(lift)} ist ${now} lang, vorher ${was}.`], [/^(\S+) was closed during the day\.$/, '$1 wurde während des Tages geschlossen.'],
  [/^The plan that is flown has (load|place|\S+) (\S+), the job no more\.(?: (.+))?$/, (_, what, id, remedy) => `Der geflogene Plan hat ${{ load: 'die Last', place: 'den Ort' }[what] ?? what} ${id}, der Auftrag nicht mehr.${remedy ? ` ${german(remedy)}` : ''}`], [/^Perhaps take it off the day instead, and leave it in the list\.$/, 'Vielleicht stattdessen vom Tag nehmen und in der Liste lassen.'], [/^Perhaps close it instead\.$/, 'Vielleicht stattdessen schließen.'],
  [/^(.+) \(told before the files were changed: see whether they know of it\)$/, (_, what) => `${german(what)} (gemeldet, bevor die Dateien geändert wurden: nachsehen, ob sie davon wissen)`],
  [/^No plan is possible then\.$/, 'So ist kein Plan möglich.'], [/^No plan is possible\. (.+)$/s, (_, what) => `Kein Plan ist möglich. ${german(what)}`], [/^The re-check refused the plan[.:] (.+)$/s, (_, what) => `Die Nachprüfung hat den Plan verweigert: ${german(what)}`], [/^The run failed: (.+)$/s, 'Der Lauf schlug fehl: $1'],
  [/^The files have a fault: (.+)$/s, 'Die Dateien haben einen Fehler: $1'], [/^The files have (\S+) faults, the first: (.+)$/s, 'Die Dateien haben $1 Fehler, der erste: $2'], [/^Points of the track lie over a degree from the job and were not used\.$/, 'Punkte der Spur liegen über ein Grad vom Auftrag entfernt und zählen nicht.'], [/^No gauge of this machine reads that\. Perhaps it is in another unit\.$/, 'So viel zeigt kein Messgerät dieser Maschine. Vielleicht in einer anderen Einheit.'], [/^A load was lifted that the job does not list\.$/, 'Eine Last wurde gehoben, die der Auftrag nicht nennt.'],
  [/^The job has nothing of that id: (.+)\.$/, (_, what) => `So etwas gibt es im Auftrag nicht: ${german(what)}.`],
  ...ahead,
  ...recheck,
  ...versions(german),
  ...faults,
];
