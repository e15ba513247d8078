// What a person can do. Views call these; only this file changes the state or asks the server.
import { api } from './api.js';
import { set, setReader as keepReader, state, us } from './state.js';
import { t } from './words.js';

const A_FRAME_MS = 16;

const say = (note, kind = 'note') => set({ note: { words: note, kind } });

/** Says what the server said, in its own sentence. */
const tell = (sentence, kind = 'note') => set({ note: { words: sentence, kind, isServers: true } });

/** Runs work that may be refused, and says the refusal in the server's own sentence. */
async function attempt(work) {
  set({ saving: state.saving + 1 });
  try {
    return await work();
  } catch (refusal) {
    refusal.status === 0 ? say(t('offline'), 'fault') : tell(refusal.message, 'fault');
    if (refusal.status === 409 && state.jobId) await loadJob();
    return null;
  } finally {
    set({ saving: state.saving - 1 });
  }
}

async function start() {
  const session = await attempt(api.session);
  if (!session) return;
  const jobs = session.jobs.map((job) => job.id);
  const jobId = jobs.includes(state.jobId) ? state.jobId : jobs.length === 1 ? jobs[0] : null;
  set({ session, jobId, panel: jobId ? state.panel : 'files' });
  if (jobId) await openJob(jobId, state.lift);
}

async function openJob(jobId, lift = null) {
  set({ jobId, lift, job: null, plan: null, map: null, table: null, versions: null });
  listenTo(jobId);
  // The plan is not waited for in turn where the session knows that there is one.
  const isPlanned = Boolean(state.session?.jobs.find((one) => one.id === jobId)?.plannedAt);
  await Promise.all([loadJob(), loadMap(), isPlanned ? readPlan() : null]);
  if (!isPlanned) await loadPlan();
  prepare();
  if (state.lift) await choose(state.lift);
}

/** Reads what the shown panel needs beyond the day itself. */
function prepare() {
  if (state.panel === 'versions') actions.loadVersions();
  if (state.panel === 'ahead' && state.job) actions.loadAhead();
  if (state.panel === 'flown' && state.plan) actions.loadFlown();
  const first = state.job?.files.find((file) => file.role === 'loads') ?? state.job?.files.find((file) => file.kind === 'table') ?? state.job?.files.find((file) => file.kind === 'text');
  if (state.panel === 'tables' && !state.table && first) openTable(first.path);
}

async function loadJob() {
  const job = await attempt(() => api.job(state.jobId));
  if (job) set({ job });
}

/** A job that has never been without faults has no map yet; its faults are told elsewhere. */
async function loadMap() {
  const map = await attempt(() => api.map(state.jobId, us() ? 'ft' : 'm').catch((refusal) => {
    if (refusal.status === 409) return null;
    throw refusal;
  }));
  if (map) set({ map });
}

/** Contours at round numbers of metres or feet come from the server. */
async function setReader(change) {
  keepReader(change);
  if (change.units && state.map) await loadMap();
}

async function loadPlan() {
  if (!state.job?.plan) {
    set({ plan: null });
    return;
  }
  await readPlan();
}

async function readPlan() {
  try {
    const plan = await api.plan(state.jobId);
    plan.loadsById = new Map(plan.view.loads.map((load) => [load.id, load]));
    set({ plan });
  } catch (refusal) {
    if (refusal.status === 0) say(t('offline'), 'fault');
    else if (refusal.status !== 404) tell(refusal.message, 'fault');
    set({ plan: null });
  }
}

let events = null;
function listenTo(jobId) {
  events?.close();
  events = api.events(jobId);
  const on = (name, then) => events.addEventListener(name, (event) => then(event.data ? JSON.parse(event.data) : {}));
  // After a restart of the server the stream says hello again: everything is read anew.
  let greeted = false;
  on('hello', () => {
    if (greeted) again();
    greeted = true;
  });
  on('progress', (run) => set({ run }));
  on('asking', (asking) => set({ asking: asking }));
  on('tapped', () => state.panel === 'flown' && actions.loadFlown());
  on('planned', async (done) => {
    set({ run: null });
    await loadJob();
    // The map reaches as far as the plan's ways do.
    await Promise.all([loadPlan(), loadMap()]);
    const session = await attempt(api.session);
    if (session) set({ session });
    // Of a plan that was asked for here there is more to say than that it is planned.
    !done.doing || done.doing === 'planned' ? say(t('plan.done')) : tell(done.doing);
    if (state.lift) choose(state.lift);
  });
  on('failed', (fault) => {
    set({ run: null });
    fault.doing ? tell(fault.doing, 'fault') : say(t('plan.failed'), 'fault');
  });
  on('changed', (change) => {
    if (change.revision !== state.job?.head) loadJob().then(keepUp);
  });
}

async function again() {
  await attempt(api.renew);
  await loadJob();
  await Promise.all([loadPlan(), loadMap()]);
  say(t('online'));
}

async function choose(number) {
  const lift = state.plan?.view.lifts.some((one) => one.number === number) ? number : null;
  set({ lift, leg: 0, at: 0, sheet: { lift } });
  if (!lift) return;
  bringIn(lift);
  const part = (name, ask) => ask().then((value) => keep(lift, { [name]: value }), (fault) => keep(lift, { [`${name}Fault`]: fault.message }));
  await Promise.all([
    part('section', () => api.section(state.jobId, lift, 0)),
    part('rose', () => api.rose(state.jobId, lift)),
    part('limits', () => api.limits(state.jobId, lift)),
  ]);
}

/** An open sheet is about as high as the screen: its row goes to the top unless it is there already. */
function bringIn(lift) {
  requestAnimationFrame(() => {
    const row = document.getElementById(`lift-${lift}`), left = document.querySelector('.left');
    if (!row || !left) return;
    const top = row.getBoundingClientRect().top - Math.max(0, left.getBoundingClientRect().top);
    if (top < 0 || top > 0.3 * innerHeight) row.scrollIntoView({ block: 'start' });
  });
}

let arrived = null;

/** What arrives of a sheet within one frame is drawn at once, not piece by piece. */
function keep(lift, part) {
  if (state.lift !== lift) return;
  if (!arrived) setTimeout(showArrived, A_FRAME_MS);
  arrived = { lift, parts: { ...(arrived?.lift === lift ? arrived.parts : {}), ...part } };
}

function showArrived() {
  const { lift, parts } = arrived;
  arrived = null;
  if (state.lift === lift) set({ sheet: { ...state.sheet, ...parts } });
}

async function chooseLeg(leg) {
  const lift = state.lift;
  set({ leg, at: 0, sheet: { ...state.sheet, section: null, sectionFault: null } });
  try {
    const section = await api.section(state.jobId, lift, leg);
    if (state.leg === leg) keep(lift, { section });
  } catch (fault) {
    keep(lift, { sectionFault: fault.message });
  }
}

/** Puts a changed job into the state; what hangs on its files is read anew. */
async function changed(answer) {
  if (!answer) return false;
  set({ job: answer });
  if (answer.table) showTable(answer.table.path, answer.table);
  else if (state.table) await openTable(state.table.path);
  loadMap();
  await keepUp();
  return true;
}

/** After a change, an undo or a redo another plan may be the one that counts. */
async function keepUp() {
  if (!state.plan || state.plan.planId === state.job?.plan?.id) return;
  await loadPlan();
  if (state.lift) await choose(state.lift);
}

const change = async (work) => changed(await attempt(work));

async function openTable(path) {
  const file = state.job.files.find((one) => one.path === path);
  if (!file) return;
  const ask = file.kind === 'table' ? api.table : api.text;
  const content = await attempt(() => ask(state.jobId, path));
  if (content) showTable(path, content);
}

function showTable(path, content) {
  set({ table: { path, kind: 'rows' in content ? 'table' : 'text', ...content } });
}

const revision = () => state.job?.head;

export const actions = {
  start, say, set, choose, chooseLeg, openJob, openTable, attempt, setReader, loadJob, loadPlan,
  fly: (at) => set({ at }),
  show: (panel) => {
    set({ panel });
    document.querySelector('.left')?.scrollTo(0, 0);
    prepare();
    if (panel === 'day' && state.lift) bringIn(state.lift);
    if (panel === 'lanes' && state.lift) requestAnimationFrame(() => document.querySelector('.lanes .chosen')?.scrollIntoView({ block: 'nearest', inline: 'center' }));
  },
  open: (dialog) => set({ dialog }),
  close: () => set({ dialog: null }),
  // Without the server there is no relief; it is asked for again when the server is back.
  relief: (bounds) => api.relief(state.jobId, 1040, 1040, bounds, state.job?.head ?? '').catch(() => null),
  newJob: async (name, from, about = {}) => {
    const made = await attempt(() => api.newJob({ name, from, ...about }));
    if (!made) return;
    set({ session: await api.session(), panel: from === 'demo' ? 'day' : 'files', dialog: null });
    await openJob(made.id);
  },
  takeOver: async (file) => {
    const made = await attempt(() => api.takeOver(file));
    if (made) {
      set({ session: await api.session() });
      await openJob(made.id);
    }
  },
  dropFiles: async (files) => {
    for (const file of files) {
      const answer = await attempt(() => api.dropFile(state.jobId, file, revision()));
      if (answer) set({ dropped: { ...state.dropped, [file.name]: answer }, job: answer });
    }
    await changed(state.job);
  },
  setRole: (name, role, details = {}) => change(() => api.setRole(state.jobId, name, role, revision(), details)),
  changeCells: (path, what, parts) => change(() => api.changeTable(state.jobId, path, { revision: revision(), what, ...parts })),
  setText: (path, text) => change(() => api.setText(state.jobId, path, revision(), text)),
  undo: () => change(() => api.undo(state.jobId, revision())),
  redo: () => change(() => api.redo(state.jobId, revision())),
  changeFeature: (feature) => change(() => api.changeFeature(state.jobId, { revision: revision(), ...feature })),
  override: (body) => change(() => api.override(state.jobId, { revision: revision(), ...body })),
  startPlan: async (seconds, seed) => {
    const run = await attempt(() => api.startPlan(state.jobId, seconds, seed));
    if (run) set({ run: { doing: t('plan.starting'), fraction: 0, ...state.run } });
  },
  stopPlan: () => attempt(() => api.stopPlan(state.jobId)),
  loadVersions: async () => {
    const versions = await attempt(() => api.versions(state.jobId));
    if (versions) set({ versions, differences: null });
  },
  // What was said of the job before a change is not shown while it is worked out anew.
  loadAhead: async () => {
    set({ ahead: null });
    const ahead = await attempt(() => api.ahead(state.jobId));
    if (ahead) set({ ahead });
  },
  loadFlown: async () => {
    const flown = await attempt(() => api.flown(state.jobId));
    if (flown) set({ flown });
  },
  compare: async (a, b) => {
    const differences = await attempt(() => api.differences(state.jobId, a, b));
    if (differences) set({ differences });
  },
  ask: async (question) => {
    // What was asked before is not waited for: one question at a time.
    if (state.question && !state.answer) await actions.stopAsking();
    set({ answer: null, question, asking: null });
    const answer = await attempt(() => api.whatIf(state.jobId, question));
    if (state.question === question) set({ answer: answer ?? { possible: false, why: state.note?.words } });
  },
  stopAsking: () => attempt(() => api.stopWhatIf(state.jobId)),
  accept: async () => {
    set({ asking: null, accepting: true });
    const done = await attempt(() => api.acceptWhatIf(state.jobId, { revision: revision(), ...state.question }));
    set({ accepting: false });
    if (!done) return;
    set({ dialog: null, question: null, answer: null });
    await loadJob();
    await keepUp();
    say(t('move.done'));
  },
  // Filled in by the views that open them, so that views need not know each other.
  openMove: () => {}, askMove: () => {}, openWhatIf: () => {}, openRate: () => {}, openSurer: () => {}, openWays: () => {}, openOverride: () => {},
};
