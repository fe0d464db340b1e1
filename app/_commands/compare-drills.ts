import type { ComparedTrack } from "@/lib/domain/compared-track";
import { compareGathered } from "@/lib/drills/compare-drills";
import type { Comparison } from "@/lib/drills/comparison";
import { Gathering } from "@/lib/drills/gathering";
import { parseComparedLine } from "@/lib/ingest/parse-compared-line";
import type { Policy } from "@/lib/verdict/policy";
import { wordsFor } from "@/lib/words/catalogue";
import { sayCaveats, sayNoReference } from "@/lib/words/say-comparison";
import { readCompareArguments } from "./compare-arguments";
import { LineWriter, readLines, Spool } from "./read-lines";

const words = wordsFor("en");

interface Read {
  readonly number: number;
  readonly outcome: ReturnType<typeof parseComparedLine>;
}

/** The lines of the input, each with its number; empty ones are none. A line in another unit than the first can't be compared. */
async function* readTracks(file: string): AsyncGenerator<Read> {
  let unit: string | null | undefined;
  let number = 0;
  for await (const line of readLines(file)) {
    number += 1;
    if (line.trim() === "") continue;
    const outcome = parseComparedLine(line);
    if (outcome.kind === "ok") {
      unit ??= outcome.value.unit ?? null;
      if (unit !== (outcome.value.unit ?? null)) {
        const issue = { field: "unit", code: "other-unit" as const, value: outcome.value.unit ?? "" };
        yield { number, outcome: { kind: "issue", id: outcome.value.id, issue } };
        continue;
      }
    }
    yield { number, outcome };
  }
}

async function eachTrack(file: string, take: (track: ComparedTrack) => void): Promise<void> {
  for await (const { outcome } of readTracks(file)) if (outcome.kind === "ok") take(outcome.value);
}

function written(comparison: Comparison): object {
  const { reference, beforeAfter, caveats, students, ...rest } = comparison;
  const none = sayNoReference(words, reference);
  const label = words.say("compare.before-after");
  return {
    students,
    reference: none === null ? reference : { ...reference, none },
    ...rest,
    beforeAfter: beforeAfter.map((one) => ({ ...one, label })),
    caveats: sayCaveats(words, caveats),
  };
}

async function compare(policy: Policy, spool: Spool): Promise<number> {
  const input = await spool.keep(process.stdin, "input");
  const gathering = new Gathering(policy);
  const errors: object[] = [];
  let tracks = 0;
  let unit: string | null = null;
  for await (const { number, outcome } of readTracks(input)) {
    if (outcome.kind === "ok") {
      if (tracks === 0) unit = outcome.value.unit ?? null;
      tracks += 1;
      gathering.takeFirst(outcome.value);
      continue;
    }
    const { field, code, value } = outcome.issue;
    errors.push({
      id: outcome.id,
      line: number,
      error: { field, message: words.say(`analyze.issue.${code}`, { value }) },
    });
  }
  await eachTrack(input, (track) => gathering.takeWithout(track));
  const comparison = written(compareGathered(gathering.gathered(), policy));
  const out = new LineWriter(process.stdout);
  await out.write(JSON.stringify({ policyVersion: policy.version, tracks, unit, ...comparison, errors }));
  return errors.length === 0 ? 0 : 1;
}

async function main(argv: readonly string[]): Promise<number> {
  const read = readCompareArguments(argv);
  if (read.kind === "unusable") {
    console.error(words.say(read.key, read.args));
    return 2;
  }
  const spool = new Spool();
  try {
    return await compare(read.policy, spool);
  } finally {
    spool.remove();
  }
}

main(process.argv.slice(2)).then((status) => {
  process.exitCode = status;
});
