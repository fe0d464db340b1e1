/**
 * Processor time that something takes in this process, all its threads, in milliseconds. What else the machine does is not in
 * it, as it is in the hour on the wall, so that a bound on it holds beside any other work.
 */
export function cpuTime(work: () => unknown): number {
  const from = process.cpuUsage();
  work();
  return spentSince(from);
}

/** The same since a moment, for what is waited for. */
export function spentSince(from: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

/** Processor time of this process since it began, in milliseconds. */
export function spentHere(): number {
  return spentSince({ user: 0, system: 0 });
}
