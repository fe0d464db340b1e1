/** Rings of files that import one another, each once, as a path that ends where it began. */
export function findCycles(graph: ReadonlyMap<string, readonly string[]>): string[][] {
  const state = new Map<string, "open" | "done">();
  const rings: string[][] = [];
  const trail: string[] = [];
  const visit = (file: string): void => {
    state.set(file, "open");
    trail.push(file);
    for (const next of graph.get(file) ?? []) {
      if (state.get(next) === "open") rings.push([...trail.slice(trail.indexOf(next)), next]);
      else if (!state.has(next) && graph.has(next)) visit(next);
    }
    trail.pop();
    state.set(file, "done");
  };
  for (const file of graph.keys()) if (!state.has(file)) visit(file);
  return rings;
}
