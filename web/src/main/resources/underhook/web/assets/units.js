// Shows numbers the way the reader wants them. Nothing is decided here: a number from the server
// is only changed into another unit, and rounded towards the safe side where the caller says which
// side that is ('up' or 'down').
import { state, us } from './state.js';
import { offsetAt, offsetIn, offsetMs, shortOffset } from './offsets.js';
import { HAIR, KG_PER_LB, M_PER_FT, M_PER_NMI, round } from './quantities.js';
import { t } from './words.js';

const has = (value) => typeof value === 'number' && Number.isFinite(value);
const none = '–';

export const number = (value, decimals = 0) => (has(value) ? value.toFixed(decimals) : none);

export const mass = (kg, side = 'near', usDecimals = 0) =>
  (!has(kg) ? none : us() ? `${round(kg / KG_PER_LB, side, usDecimals)} lb` : `${round(kg, side)} kg`);

/** The metres in a unit of heights and of distances, as this reader has them. */
export const LENGTH_M = () => (us() ? M_PER_FT : 1);
export const DISTANCE_M = () => (us() ? M_PER_NMI : 1);

export const length = (m, side = 'near', decimals = 0, usDecimals = 0) =>
  (!has(m) ? none : us() ? `${round(m / M_PER_FT, side, usDecimals)} ft` : `${round(m, side, decimals)} m`);

export const distance = (m) => {
  if (!has(m)) return none;
  if (us()) return `${(m / M_PER_NMI).toFixed(2)} NM`;
  return m < 1000 ? `${Math.round(m)} m` : `${(m / 1000).toFixed(2)} km`;
};

export const amsl = (m, side = 'near') => `${length(m, side)} ${t('amsl')}`;

export const speed = (kt) => (has(kt) ? `${Math.round(kt)} kt` : none);

/** A time that something takes, rounded up. */
export const minutes = (value) => (has(value) ? `${round(value, 'up', 1)} min` : none);
export const minutesDown = (value) => (has(value) ? `${round(value, 'down', 1)} min` : none);

/** A true bearing, shown as the reader wants it: TRUE, or MAG with the job's variation. */
export function bearing(trueDeg) {
  if (!has(trueDeg)) return none;
  const magnetic = state.reader.north === 'mag' && has(state.job?.magneticVariationDeg);
  const shown = Math.round(trueDeg - (magnetic ? state.job.magneticVariationDeg : 0) + HAIR);
  const turned = ((shown % 360) + 360) % 360;
  return `${String(turned === 0 ? 360 : turned).padStart(3, '0')}° ${magnetic ? 'MAG' : 'TRUE'}`;
}

/** On the day of a clock change with its offset, as on paper: one hour of it is there twice, or not at all. */
const told = (offset) => (state.job?.offsets?.length > 1 ? ` ${shortOffset(offset)}` : '');

/** Local time of the job. The server writes it with its offset, so no zone is applied here. */
export const clock = (iso) => (iso ? `${iso.slice(11, 16)}${told(offsetIn(iso))}` : none);

/** The same of any moment, ms since 1970, beside a time that the server wrote. */
export function clockAt(ms, beside) {
  const offset = offsetAt(state.job?.zone, ms) ?? offsetIn(beside);
  return `${new Date(ms + offsetMs(offset)).toISOString().slice(11, 16)}${told(offset)}`;
}

/** A moment that the server wrote in UTC, in the job's zone and with its offset; in UTC where the browser does not know the zone. */
export function stamp(iso) {
  if (!iso) return none;
  const zone = state.job?.zone || 'UTC';
  try {
    const parts = new Intl.DateTimeFormat('en', { ...STAMP, timeZone: zone }).formatToParts(new Date(iso));
    const { year, month, day, hour, minute, timeZoneName } = Object.fromEntries(parts.map(({ type, value }) => [type, value]));
    return `${year}-${month}-${day} ${hour}:${minute} ${timeZoneName.replace(/^GMT(\+00:00)?$/, 'UTC').replace('GMT', '')}`;
  } catch {
    return `${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`;
  }
}

const STAMP = { year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZoneName: 'longOffset' };

/** How much larger charts are drawn where fingers meet them. */
export const enlarge = () => (matchMedia('(pointer: coarse)').matches ? 1.4 : 1);

export const money = (cents, currency) => (has(cents) ? `${(Math.floor(cents) / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, '\u202f')} ${currency ?? ''}`.trim() : none);

export const seconds = (iso) => Date.parse(iso) / 1000;

/**
 * A value in the unit the server gave it, changed only where a reader's system has another: there to the tenth
 * where nobody says which side of it is safe.
 */
export function withUnit(given, unit, side = 'near') {
  const turned = us() && (unit === 'kg' || unit === 'm') && /^-?\d+(\.\d+)?$/.test(given);
  const value = turned ? Number(given) : given;
  const tenth = side === 'near' ? 1 : 0;
  const joined = (text) => (unit === 'deg' || unit === '°' ? `${text}°` : `${text}${unit ? ` ${unit}` : ''}`);
  if (value === 'never') return t('value.never');
  if (!has(value)) return value == null || value === '' ? none : joined(value);
  if (unit === 'kg') return mass(value, side, tenth);
  if (unit === 'm') return length(value, side, value < 100 && !Number.isInteger(value) ? 1 : 0, tenth);
  const decimals = Number.isInteger(value) ? 0 : Math.abs(value) < 10 ? 2 : 1;
  return joined(value.toFixed(decimals));
}
