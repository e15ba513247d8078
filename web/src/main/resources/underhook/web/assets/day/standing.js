// How the line stands after taps that the server does not know yet. The server judges; this only lets
// a device without network go on, and say beforehand what the server will not allow.

const START = { engineOn: false, inTheAir: false, lineM: null, lineChecked: false, peopleAboard: 0, onHook: [], notYetFree: [], freeSeenBy: null };

/** The lines of these loads as planned, m, where another one than that hangs there. */
export const otherLine = (now, lifts, loads) => (now.lineM === null ? null : lifts.find((lift) => lift.loads.some((load) => loads.includes(load.id)) && Math.abs(lift.lineM - now.lineM) > 0.05)?.lineM ?? null);

/** Whether one of these loads waits at another place than the one that was stated. */
const elsewhere = (lifts, { loads, place }) => Boolean(place) && lifts.some((lift) => lift.from !== place && lift.loads.some((load) => loads.includes(load.id)));

/** Why a tap is not allowed, as a code; null when it is as far as this device knows. */
export function refusal({ standing: now, lifts }, tap) {
  const busy = now.onHook.length > 0;
  switch (tap.kind) {
    case 'hooked':
      if (now.lineM === null) return 'TAP_OUT_OF_ORDER';
      if (now.peopleAboard > 0) return 'LINE_ON_WITH_PEOPLE';
      if (otherLine(now, lifts, tap.loads) !== null) return 'LINE_OTHER';
      if (!now.lineChecked) return 'LINE_NOT_CHECKED';
      if (busy) return 'TAP_OUT_OF_ORDER';
      if (now.notYetFree.length) return 'RELEASE_NOT_CONFIRMED';
      return elsewhere(lifts, tap) ? 'HANDLER_ABSENT' : null;
    case 'off': case 'aborted': return busy ? null : 'TAP_OUT_OF_ORDER';
    case 'free-seen': return now.notYetFree.length ? null : 'TAP_OUT_OF_ORDER';
    case 'free-confirmed':
      if (!now.notYetFree.length) return 'TAP_OUT_OF_ORDER';
      return now.freeSeenBy === null || now.freeSeenBy === tap.by ? 'RELEASE_NOT_CONFIRMED' : null;
    case 'line-on': return now.peopleAboard > 0 ? 'LINE_ON_WITH_PEOPLE' : null;
    case 'line-checked': return now.lineM === null ? 'TAP_OUT_OF_ORDER' : null;
    case 'line-off':
      if (now.lineM === null || busy) return 'TAP_OUT_OF_ORDER';
      return now.notYetFree.length ? 'RELEASE_NOT_CONFIRMED' : null;
    case 'people-aboard': return now.lineM === null ? null : 'LINE_ON_WITH_PEOPLE';
    case 'people-out': return now.peopleAboard > 0 ? null : 'TAP_OUT_OF_ORDER';
    case 'engine-off': case 'refuelled': return busy ? 'TAP_OUT_OF_ORDER' : null;
    case 'take-off': return now.inTheAir ? 'TAP_OUT_OF_ORDER' : null;
    case 'landing': return now.inTheAir ? null : 'TAP_OUT_OF_ORDER';
    default: return null;
  }
}

const without = (all, some) => all.filter((one) => !some.includes(one));

function after(now, tap) {
  switch (tap.kind) {
    case 'engine-on': return { ...now, engineOn: true };
    case 'engine-off': return { ...now, engineOn: false };
    case 'take-off': return { ...now, inTheAir: true };
    case 'landing': return { ...now, inTheAir: false };
    case 'line-on': return { ...now, lineM: tap.lineM ?? now.lineM, lineChecked: false };
    case 'line-checked': return { ...now, lineChecked: true };
    case 'line-off': return { ...now, lineM: null, lineChecked: false };
    case 'people-aboard': return { ...now, peopleAboard: now.peopleAboard + (tap.people || 1) };
    case 'people-out': return { ...now, peopleAboard: 0 };
    case 'hooked': return { ...now, onHook: [...now.onHook, ...tap.loads] };
    case 'off': {
      const down = tap.loads.length ? tap.loads : now.onHook.slice(0, 1);
      return { ...now, onHook: without(now.onHook, down), notYetFree: [...now.notYetFree, ...down], freeSeenBy: null };
    }
    case 'free-seen': return { ...now, freeSeenBy: now.freeSeenBy ?? tap.by };
    case 'free-confirmed':
      return now.freeSeenBy === null || now.freeSeenBy === tap.by ? now : { ...now, notYetFree: tap.loads.length ? without(now.notYetFree, tap.loads) : [], freeSeenBy: null };
    case 'aborted': return { ...now, onHook: [] };
    case 'snagged': return { ...now, lineChecked: false };
    default: return now;
  }
}

const ANSWERS = { refuel: 'refuelled', crew_move: 'people-out' };

/** Nobody taps these: they are over when what comes after them is. */
const UNTAPPED = ['position', 'break'];

const isDoneBy = (step, tap) => (step.kind === 'line_change'
  ? (step.lineM ? tap.kind === 'line-on' && Math.abs((tap.lineM ?? 0) - step.lineM) < 0.05 : tap.kind === 'line-off')
  : tap.kind === ANSWERS[step.kind]);

/** The first that it does is over: two flights of people are tapped twice. */
const lessDone = (steps, tap) => {
  const at = steps.findIndex((step) => isDoneBy(step, tap));
  const isOver = (step) => UNTAPPED.includes(step.kind) || step.kind === 'line_change' && steps[at].kind === 'line_change';
  return at < 0 ? steps : steps.filter((step, i) => i > at || i < at && !isOver(step));
};

/** What still comes before the next lift, less what was tapped here since one planned before it was hooked. */
const stillBefore = (next, left, earlier) => {
  const since = left.findLastIndex((tap) => tap.kind === 'hooked' && earlier.some((lift) => lift.loads.some((load) => tap.loads.includes(load.id))));
  return left.slice(since + 1).reduce(lessDone, next?.before ?? []);
};

/** A lift with some of its loads alone. */
export const only = (lift, ids) => ({ ...lift, loads: lift.loads.filter((load) => ids.includes(load.id)), drops: lift.drops.filter((drop) => ids.includes(drop.load)) });

/** Standing and lifts after the taps that wait. One that takes a waiting tap back takes it out. */
export function foresee(day, waiting) {
  const gone = new Set(waiting.filter((tap) => tap.kind === 'undone').map((tap) => tap.undoes));
  const left = waiting.filter((tap) => tap.kind !== 'undone' && !gone.has(tap.id));
  const standing = left.reduce(after, day?.standing ?? START);
  const hooked = new Set(left.filter((tap) => tap.kind === 'hooked').flatMap((tap) => tap.loads));
  const lifts = (day?.lifts ?? []).map((lift) => {
    const loads = lift.loads.map((load) => load.id);
    if (loads.some((id) => standing.onHook.includes(id))) return { ...lift, state: 'onHook' };
    if (loads.some((id) => standing.notYetFree.includes(id))) return { ...lift, state: 'setDown' };
    const moved = loads.some((id) => hooked.has(id)) || lift.state === 'onHook' || lift.state === 'setDown';
    if (!moved || !left.length) return lift;
    if (left.some((tap) => tap.kind === 'aborted')) return { ...lift, state: 'aborted' };
    // What was planned with it and not tapped is still to come.
    const rest = lift.state === 'onHook' || lift.state === 'setDown' ? [] : loads.filter((id) => !hooked.has(id));
    return rest.length ? only(lift, rest) : { ...lift, state: 'done' };
  });
  const next = lifts.find((lift) => lift.state === 'waits' || lift.state === 'aborted') ?? null;
  return { standing, lifts, next, before: stillBefore(next, left, (day?.lifts ?? []).slice(0, lifts.indexOf(next))) };
}
