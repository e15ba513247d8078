// What is wrong with a file, in German: what, the value found, and what is allowed. What is not here stays English.

const WHAT = {
  'is missing': 'fehlt', 'is empty': 'ist leer', 'is out of range': 'liegt außerhalb', 'is out of any range': 'liegt außerhalb von allem', 'has a hole': 'hat eine Lücke',
  'is no number': 'ist keine Zahl', 'is no time': 'ist keine Zeit', 'is no date': 'ist kein Datum', 'is no list': 'ist keine Liste', 'is no id': 'ist keine Kennung', 'is no line': 'ist keine Linie', 'is no point': 'ist kein Punkt', 'is no file': 'ist keine Datei', 'is no folder': 'ist kein Ordner',
  'is no currency': 'ist keine Währung', 'is no time zone': 'ist keine Zeitzone', 'is no version': 'ist keine Version', 'is no closed ring': 'ist kein geschlossener Ring', 'is no whole number of cents': 'ist keine ganze Zahl von Cent', 'is no code of a finding': 'ist kein Code eines Befunds', 'is no longitude and latitude': 'ist keine Länge und Breite',
  'is no known place': 'ist kein bekannter Platz', 'is no known load': 'ist keine bekannte Last', 'is no known kind': 'ist keine bekannte Art', 'is no known word': 'ist kein bekanntes Wort', 'is no known field': 'ist kein bekanntes Feld', 'is no known column': 'ist keine bekannte Spalte', 'is no known reference system': 'ist kein bekanntes Bezugssystem',
  'is not whole': 'ist nicht ganz', 'is taken': 'ist vergeben', 'is too large': 'ist zu groß', 'is where the load comes from': 'ist, wo die Last herkommt', 'is the load itself': 'ist die Last selbst', 'is one place': 'ist ein und derselbe Platz', 'is neither yes nor no': 'ist weder yes noch no', 'is far off': 'liegt weit ab',
  'is below the mean wind': 'ist weniger als das Mittel', 'is not after the row before': 'kommt nicht nach der Zeile davor', 'is not above the row before': 'ist nicht mehr als die Zeile davor', 'is no weather report': 'ist keine Wettermeldung', 'does not ascend': 'steigt nicht',
  'has an unknown unit': 'hat eine unbekannte Einheit', 'has an unknown ending': 'hat eine unbekannte Endung', 'has a leading zero': 'beginnt mit einer Null', 'is of an unknown type': 'ist von unbekannter Art', 'is not there': 'ist nicht da', 'is nowhere on Earth': 'liegt nirgends auf der Erde', 'is no position': 'ist keine Lage', 'is cut off': 'ist abgeschnitten',
  'stands twice': 'steht zweimal', 'has no rows': 'hat keine Zeilen', 'ends too early': 'endet zu früh', 'may be thousands or decimals': 'kann Tausender oder Dezimalen meinen', 'says missing though there is a mass': 'sagt missing, obwohl eine Masse dasteht', 'waits for itself through others': 'wartet über andere auf sich selbst', 'names a file that is not there': 'nennt eine Datei, die nicht da ist', 'has too few rows': 'hat zu wenige Zeilen', 'has too many rows': 'hat zu viele Zeilen',
};
const UNITS = { percent: 'Prozent', degrees: 'Grad', minutes: 'Minuten', minute: 'Minute', hours: 'Stunden' };
const unit = (text) => text.replace(/\b(percent|degrees|minutes?|hours)\b/g, (word) => UNITS[word]);
const ALLOWED = [[/^perhaps (".*") is meant$/s, 'vielleicht ist $1 gemeint'], [/^between (\S+(?: minute)?) and (.+?)(?=,|$)/, (_, least, most) => `zwischen ${unit(least)} und ${unit(most)}`], [/^above (\S+) and at most (.+?)(?=,|$)/, (_, least, most) => `über ${least} und höchstens ${unit(most)}`],
  [/^above (\S+)$/, 'über $1'], [/^at most (.+)$/, (_, most) => `höchstens ${unit(most)}`], [/, which is (\S+) to (.+)$/, ', das ist $1 bis $2'], [/^empty, or at least the mean wind$/, 'leer oder mindestens das Mittel'], [/^a whole number$/, 'eine ganze Zahl'], [/^a header and at least one row$/, 'eine Kopfzeile und mindestens eine Zeile'], [/^a header with (\S+), alone where there is nothing to state$/, 'eine Kopfzeile mit $1, allein, wo es nichts zu nennen gibt'], [/^(\w+) or (\w+)$/, '$1 oder $2'], [/^known are (.+)$/s, 'bekannt sind $1'], [/^one of (.+)$/s, 'eines von $1'], [/^a number such as (.+)$/, 'eine Zahl wie $1'], [/^(\S+) to (\S+)$/, '$1 bis $2']];

const allowed = (text) => ALLOWED.reduce((rest, [shape, words]) => rest.replace(shape, words), text);

export const faults = [
  [new RegExp(`^(${Object.keys(WHAT).join('|')})(, found ".*?")?(?:, (.+))?$`, 's'), (_, what, found, may) => `${WHAT[what]}${found ? found.replace(', found', ', gefunden') : ''}${may ? `, ${allowed(may)}` : ''}`],
];
