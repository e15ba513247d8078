// Sentences of the server in German, by their shape; the values stand where they stood. A shape that is not
// here stays English on the page, and is marked so for those who hear it read.
const GAUGES = { mean: 'Mittel', gust: 'Böe', 'gust over mean': 'Böe über Mittel' };

/** What ends the flying. */
export const says = [
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
