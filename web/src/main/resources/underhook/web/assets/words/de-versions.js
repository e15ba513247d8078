// What was done to a job, and in what two of its versions differ, in German, by its shape.

const MAP = { added: 'auf der Karte ergänzt', moved: 'auf der Karte verschoben', removed: 'auf der Karte gelöscht' };
const FILE = { added: 'ergänzt', replaced: 'ersetzt', removed: 'entfernt', changed: 'geändert' };
const BECAME = /; (\S+) became (\S+)$/;

/** @param german says any other sentence of the server in German */
export const versions = (german) => [
  [/^begun$/, 'begonnen'], [/^the demo day$/, 'der Beispieltag'], [/^imported from a folder$/, 'aus einem Ordner übernommen'], [/^imported again from its folder$/, 'erneut aus seinem Ordner übernommen'],
  [/^(?=.*; \S+ became \S+$).+$/, (all) => `${german(all.replace(BECAME, ''))}; aus ${BECAME.exec(all)[1]} wurde ${BECAME.exec(all)[2]}`],
  [/^(.+) (added|moved|removed) on the map$/, (_, id, done) => `${id} ${MAP[done]}`],
  [/^(\S+) (added|replaced|removed|changed)$/, (_, path, done) => `${path} ${FILE[done]}`],
  [/^(\S+) is the job's (\S+)$/, '$1 dient als $2'], [/^(\S+) of (.+) overridden$/, '$1 von $2 übergangen'],
  [/^lift (\d+) moved behind lift (\d+)$/, 'Hub $1 hinter Hub $2 verschoben'], [/^all day with line (.+)$/, 'den ganzen Tag mit Leine $1'], [/^machine of (\S+)$/, 'Maschine aus $1'],
  [/^lift (\d+) from (\S+)$/, 'Hub $1 von $2'], [/^day from (\S+)$/, 'Tag ab $1'], [/^at most (.+) of fuel$/, 'höchstens $1 Treibstoff'], [/^a flying minute counted at (\S+) % of its rate$/, 'eine Flugminute zählt $1 % ihres Satzes'],
  [/^(\S+) is gone\.$/, '$1 ist weg.'], [/^(\S+) is new\.$/, '$1 ist neu.'], [/^(\S+) has changed\.$/, '$1 wurde geändert.'],
  [/^(\S+): (.+) is new\.$/, '$1: $2 ist neu.'], [/^(\S+): (.+) is gone\.$/, '$1: $2 ist weg.'],
  [/^(\S+: .*, \S+ ".*" → ".*"\.)$/s, '$1'],
  [/^Flying: (\S+ min)\.$/, 'Flugzeit: $1.'], [/^Finish: (\S+ min)\.$/, 'Ende: $1.'],
  [/^(\S+) is left out now: (.+)$/s, (_, load, why) => `${load} bleibt jetzt liegen: ${german(why)}`], [/^(\S+) is flown now\.$/, '$1 wird jetzt geflogen.'],
  [/^(.+) (is|are) lift (\d+) now, was lift (\d+)\.$/, (_, loads, are, now, was) => `${loads} ${are === 'is' ? 'ist' : 'sind'} jetzt Hub ${now}, war Hub ${was}.`],
];
