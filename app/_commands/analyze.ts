import { createWriteStream } from "node:fs";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { parseTrackLine } from "@/lib/ingest/parse-track-line";
import { type Detail, judgeTrack } from "@/lib/verdict/judge-track";
import type { Policy } from "@/lib/verdict/policy";
import { type ListedLook, rosterList } from "@/lib/verdict/roster-list";
import { wordsFor } from "@/lib/words/catalogue";
import { type AnalyzeArguments, readArguments } from "./analyze-arguments";
import { learnFromFile, NoiseFileError, type NoiseOfPool, noNoise, readNoiseFile } from "./analyze-noise";
import { LineWriter, readLines, Spool } from "./read-lines";

const words = wordsFor("en");

async function noiseOf(args: AnalyzeArguments, input: string): Promise<NoiseOfPool> {
  switch (args.noise.kind) {
    case "none":
      return noNoise();
    case "models":
      return readNoiseFile(args.noise.file, words);
    case "roster":
      return learnFromFile(args.noise.file, args.policy);
    case "call":
      return learnFromFile(input, args.policy);
  }
}

interface BadLine {
  readonly kind: "bad";
  readonly out: object;
}

interface GoodLine {
  readonly kind: "good";
  readonly verdict: TrackVerdict;
  readonly listedLooks: readonly ListedLook[];
}

function badLine(id: string | null, line: number, field: string, code: string, value: string): BadLine {
  return { kind: "bad", out: { id, line, error: { field, message: words.say(`analyze.issue.${code}`, { value }) } } };
}

/** A name that the noise file doesn't hold; null: every name is known. */
function unknownNoise(
  track: JudgedTrack,
  noiseFor: ReturnType<NoiseOfPool>,
): { readonly at: number; readonly name: string } | null {
  for (const [at, session] of track.sessions.entries())
    try {
      noiseFor(session.noiseModel);
    } catch {
      return { at, name: session.noiseModel ?? "" };
    }
  return null;
}

function judgeLine(
  line: string,
  number: number,
  noise: NoiseOfPool,
  policy: Policy,
  detail: Detail,
): BadLine | GoodLine {
  const outcome = parseTrackLine(line);
  if (outcome.kind === "issue")
    return badLine(outcome.id, number, outcome.issue.field, outcome.issue.code, outcome.issue.value);
  const track = outcome.value;
  const noiseFor = noise(track.pool);
  const unknown = unknownNoise(track, noiseFor);
  if (unknown)
    return badLine(track.id, number, `sessions[${unknown.at}].noiseModel`, "unknown-noise-model", unknown.name);
  return { kind: "good", ...judgeTrack(track, noiseFor, policy, detail) };
}

/** The verdict as it is written: its looks only when they are asked for, and what the list says when there is one. */
function written(
  verdict: TrackVerdict,
  looks: AnalyzeArguments["looks"],
  listing: { readonly latest: boolean; readonly looks: readonly boolean[] } | null,
): object {
  const { looks: all, ...rest } = verdict;
  const proved = verdict.verdict === "gain" || verdict.verdict === "slip";
  return {
    ...rest,
    ...(looks === "yes"
      ? { looks: (all ?? []).map((look, at) => (listing ? { ...look, listed: listing.looks[at] ?? false } : look)) }
      : {}),
    ...(listing ? { listed: listing.latest, said: listing.latest || !proved ? verdict.verdict : "open" } : {}),
  };
}

async function analyze(args: AnalyzeArguments, spool: Spool): Promise<number> {
  const input = await spool.keep(process.stdin, "input");
  const noise = await noiseOf(args, input);
  const out = new LineWriter(process.stdout);
  // With a list the verdicts are kept aside until every track has been looked at.
  const aside = args.list === null ? null : new LineWriter(createWriteStream(spool.file("verdicts"), { mode: 0o600 }));
  const tracks: (readonly ListedLook[])[] = [];
  const detail = args.looks === "yes" || aside !== null ? "looks" : "latest";
  let status = 0;
  let number = 0;
  for await (const line of readLines(input)) {
    number += 1;
    if (line.trim() === "") continue;
    const judged = judgeLine(line, number, noise, args.policy, detail);
    if (judged.kind === "bad") status = 1;
    else if (aside) tracks.push(judged.listedLooks);
    if (aside)
      await aside.write(JSON.stringify(judged.kind === "bad" ? judged : { kind: "good", verdict: judged.verdict }));
    else
      await out.write(JSON.stringify(judged.kind === "bad" ? judged.out : written(judged.verdict, args.looks, null)));
  }
  if (aside && args.list !== null) {
    await aside.end();
    const list = rosterList(tracks, args.list, args.policy);
    let place = 0;
    for await (const line of readLines(spool.file("verdicts"))) {
      const judged = JSON.parse(line) as BadLine | Omit<GoodLine, "listedLooks">;
      if (judged.kind === "bad") {
        await out.write(JSON.stringify(judged.out));
        continue;
      }
      const listing = { latest: list.latest[place] ?? false, looks: list.looks[place] ?? [] };
      place += 1;
      await out.write(JSON.stringify(written(judged.verdict, args.looks, listing)));
    }
  }
  return status;
}

async function main(argv: readonly string[]): Promise<number> {
  const read = readArguments(argv);
  if (read.kind === "unusable") {
    console.error(words.say(read.key, read.args));
    return 2;
  }
  const spool = new Spool();
  try {
    return await analyze(read.value, spool);
  } catch (error) {
    const { noise } = read.value;
    const fault = error as NodeJS.ErrnoException;
    if (error instanceof NoiseFileError) console.error(error.message);
    else if (fault.code !== undefined && "file" in noise && fault.path === noise.file)
      console.error(words.say("analyze.usage.file", { file: noise.file, reason: fault.code }));
    else throw error;
    return 2;
  } finally {
    spool.remove();
  }
}

main(process.argv.slice(2)).then((status) => {
  process.exitCode = status;
});
