// Offsets of the job's zone from UTC, as text such as +02:00. Desk and devices read it.

/** The offset that stands behind a time of the server. */
export const offsetIn = (iso) => /[+-]\d\d:\d\d$/.exec(iso)?.[0] ?? '+00:00';

/** The offset of a zone at a moment, ms since 1970; null where the browser does not know the zone. */
export function offsetAt(zone, ms) {
  try {
    const name = new Intl.DateTimeFormat('en', { timeZone: zone ?? '', timeZoneName: 'longOffset' }).formatToParts(new Date(ms)).find(({ type }) => type === 'timeZoneName').value;
    return /[+-]\d\d:\d\d/.exec(name)?.[0] ?? '+00:00';
  } catch {
    return null;
  }
}

export function offsetMs(offset) {
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6));
  return (offset[0] === '-' ? -1 : 1) * minutes * 60000;
}

/** "+02", as on paper; minutes where there are some. */
export const shortOffset = (offset) => offset.replace(/:00$/, '');
