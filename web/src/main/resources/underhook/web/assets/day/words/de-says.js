// Sentences of the server in German, by their shape; the values stand where they stood. A shape that is not
// here stays English on the page, and is marked so for those who hear it read.
const GAUGES = { mean: 'Mittel', gust: 'Böe', 'gust over mean': 'Böe über Mittel' };

/** Why a stop of the engine cannot have been. */
const NOT_STOOD = [
  [/^it ends before it begins$/, 'sie endet, bevor sie beginnt'], [/^it is not over yet$/, 'sie ist noch nicht vorbei'],
  [/^\[(.+)\] hung from (\S+) to (\S+)$/, '$1 hing von $2 bis $3'], [/^\[(.+)\] hung from (\S+) on$/, '$1 hing ab $2'],
  [/^the machine was in the air from (\S+) to (\S+)$/, 'die Maschine war von $1 bis $2 in der Luft'], [/^the machine was in the air from (\S+) on$/, 'die Maschine war ab $1 in der Luft'],
  [/^it was told to be off from (\S+) to (\S+)$/, 'von $1 bis $2 war es schon als aus gemeldet'], [/^it was told to be off from (\S+)$/, 'ab $1 war es schon als aus gemeldet'], [/^it was told to be on at (\S+)$/, 'um $1 war es als an gemeldet'],
];

/** What ends the flying. */
export const says = [
  [/^The engine cannot have been off from (\S+) to (\S+): (.+)\.$/, (_, from, to, why) => `Das Triebwerk kann nicht von ${from} bis ${to} aus gewesen sein: ${why.split('; ').map((one) => NOT_STOOD.reduce((said, [shape, words]) => said.replace(shape, words), one)).join('; ')}.`],
  [/^(\S+) is said to be elsewhere: its flight to (\S+) at (\S+) counts as (flown without it|not made)\.$/, (_, crew, to, at, how) => `${crew} ist nach eigener Angabe woanders: ihr Flug nach ${to} um ${at} zählt als ${how === 'not made' ? 'nicht gemacht' : 'ohne sie geflogen'}.`],
  [/^(\S+) stays at (\S+) by the files and is said to be elsewhere: it counts nowhere until it is said to be back\.$/, '$1 bleibt nach den Dateien an $2 und ist nach eigener Angabe woanders: sie zählt nirgends, bis sie wieder dort gemeldet ist.'],
  [/^That (\S+) is at (\S+) was taken back: it counts at (\S+), where it was before\. Perhaps say where it is\.$/, 'Dass $1 an $2 ist, wurde zurückgenommen: sie zählt an $3, wo sie vorher war. Vielleicht sagen, wo sie ist.'],
  [/^crew (\S+) is at (\S+) since (\S+)$/, 'Gruppe $1 ist seit $3 an $2'],
  [/^nobody has tapped a fuel reading yet$/, 'noch hat niemand einen Tankstand eingetragen'],
  [/^at least (.+) left of (.+) read at (\S+); the reserve is (.+ kg)(; the engine is off)?$/, (_, least, read, at, reserve, off) => `mindestens ${least} übrig von ${read}, gelesen um ${at}; die Reserve ist ${reserve}${off ? '; das Triebwerk steht' : ''}`],
  [/^(mean|gust|gust over mean) at (\S+) (\d+ kt), most (\d+ kt) for lift (\d+)$/, (_, gauge, place, blows, most, lift) => `${GAUGES[gauge]} an ${place} ${blows}, höchstens ${most} für Hub ${lift}`],
  [/^(.+) to (.+) is expected at (\S+), too late: (mean|gust|gust over mean) at (\S+) (\d+ kt) from (\S+), most (\d+ kt); ask for a new order$/, (_, loads, places, expected, gauge, place, blows, from, most) => `${loads} nach ${places} wird um ${expected} erwartet, zu spät: ${GAUGES[gauge]} an ${place} ${blows} ab ${from}, höchstens ${most}; neue Reihenfolge verlangen`],
  [/^(.+) to (.+), expected at (\S+): (mean|gust|gust over mean) at (\S+) (\d+ kt) from (\S+), most (\d+ kt)$/, (_, loads, places, expected, gauge, place, blows, from, most) => `${loads} nach ${places}, erwartet um ${expected}: ${GAUGES[gauge]} an ${place} ${blows} ab ${from}, höchstens ${most}`],
  [/^the wind of the forecast closes none of the lifts after this$/, 'der Wind der Vorhersage schließt keinen der späteren Hübe'],
  [/^guarded: nobody under the load while it passes$/, 'bewacht: niemand unter der Last, solange sie quert'], [/^allowed$/, 'erlaubt'], [/^passed over, line off$/, 'überflogen, Leine ab'],
  [/^near square, at least (.+) above the highest wire(; no release here)?$/, (_, above, no) => `fast im rechten Winkel, mindestens ${above} über dem höchsten Seil${no ? '; hier nicht abwerfen' : ''}`],
  [/^stays under (\d+ kt) for lift (\d+) as long as there is a forecast$/, 'bleibt unter $1 für Hub $2, so weit die Vorhersage reicht'],
  [/^(\d+ min) with the engine on (since the last break|today), most (\d+)(?:; (\d+) min of the day were planned off and not tapped so, (\d+) at once)?(; it is off)?$/, (_, ran, since, most, assumed, longest, off) => `${ran} Triebwerkzeit ${since === 'today' ? 'heute' : 'seit der letzten Pause'}, höchstens ${most}${assumed ? `; ${assumed} min des Tages waren mit stehendem Triebwerk geplant und nicht so gemeldet, ${longest} am Stück` : ''}${off ? '; es steht' : ''}`],
  [/^the pilot's duty began at (\S+)$/, 'der Dienst des Piloten begann um $1'],
  [/^the sun stands ahead on the way in to (\S+); another way in, or cloud, may do$/, 'die Sonne steht voraus im Anflug nach $1; ein anderer Anflug oder Wolken können helfen'],
  [/^not ahead on the way in within the next two hours$/, 'in den nächsten zwei Stunden nicht voraus im Anflug'],
  [/^not a number in the forecast; it says: (.+)$/s, 'steht in der Vorhersage nicht als Zahl; sie sagt: $1'],
  [/^the forecast says nothing of it$/, 'die Vorhersage sagt nichts davon'],
  [/^sunset at (\S+), the last landing (\d+ min) before$/, 'Sonnenuntergang um $1, die letzte Landung $2 davor'],
  [/^the sun does not come up$/, 'die Sonne geht nicht auf'],
  [/^as the job states$/, 'wie der Auftrag sagt'],
  [/^the job states none$/, 'der Auftrag nennt keine'],
  [/^no forecast beyond(?:: (.+))?$/s, (_, source) => `danach keine Vorhersage${source ? `: ${source}` : ''}`],
];
