/** A large job made of copies of the demo job: its panels, inserts and connections, each copy with its own size and loads. */

/**
 * @param demo the demo job file as plain JSON
 * @param count how many connections to make
 * @returns a job file as plain JSON
 */
export function makeLargeJob(demo, count) {
  const job = leaveOutPairs(demo.job);
  const large = { ...demo, job: { ...job, panels: [], castIns: [], connections: [], pours: [] } };
  for (let copy = 0; large.job.connections.length < count; copy++) {
    const rename = (name) => `${name}/${copy}`;
    const vary = (low, high, step) => low + (high - low) * (0.5 + 0.5 * Math.sin(copy * step));
    const load = vary(0.4, 1.3, 1.7);
    large.job.panels.push(
      ...job.panels.map((panel) => ({
        ...panel,
        key: rename(panel.key),
        mark: rename(panel.mark),
        concrete: job.concretes[copy % job.concretes.length].id,
      })),
    );
    large.job.castIns.push(
      ...job.castIns.map((item) => ({ ...item, key: rename(item.key), panel: rename(item.panel) })),
    );
    large.job.connections.push(
      ...job.connections.slice(0, count - large.job.connections.length).map((connection) => ({
        ...connection,
        key: rename(connection.key),
        mark: rename(connection.mark),
        panel: rename(connection.panel),
        actions: scale(connection.actions, load),
      })),
    );
  }
  return large;
}

/** The job without handed partners and their sources: with other loads in each copy they would be no mirror images. */
function leaveOutPairs(job) {
  const left = new Set(job.panels.flatMap(({ mark, handedOf }) => (handedOf === null ? [] : [mark, handedOf])));
  const isKept = ({ panel }) => !left.has(panel);
  return {
    ...job,
    panels: job.panels.filter(({ mark }) => !left.has(mark)),
    castIns: job.castIns.filter(isKept),
    connections: job.connections.filter(isKept),
  };
}

/** Actions with every force and moment times a factor. */
function scale(actions, factor) {
  if (Array.isArray(actions)) return actions.map((entry) => scale(entry, factor));
  if (typeof actions !== 'object' || actions === null) return actions;
  return Object.fromEntries(
    Object.entries(actions).map(([key, value]) => [
      key,
      typeof value === 'number' && /_kNm?$/.test(key) ? value * factor : scale(value, factor),
    ]),
  );
}
