import { parseArgs } from "node:util";
import { isCalendarDay } from "@/lib/domain/calendar-day";

/** What a calibration is asked for: its day, and whole numbers by name. */
export interface RunOptions<Name extends string> {
  readonly date: string;
  readonly numbers: Readonly<Record<Name, number>>;
  /** The command that repeats it. */
  readonly command: string;
}

/**
 * Reads `--date YYYY-MM-DD` and whole numbers from 1 off the command line.
 *
 * `script`: name of the npm script. `defaults`: numbers by option name. Throws a RangeError that names what is wrong.
 */
export function runOptions<Name extends string>(
  script: string,
  defaults: Readonly<Record<Name, number>>,
): RunOptions<Name> {
  const names = Object.keys(defaults) as Name[];
  const asked: Record<string, { type: "string"; default?: string }> = { date: { type: "string" } };
  for (const name of names) asked[name] = { type: "string", default: String(defaults[name]) };
  const { values } = parseArgs({ options: asked });
  const date = String(values.date ?? "");
  if (!isCalendarDay(date)) throw new RangeError("say the day of the run: --date YYYY-MM-DD");
  const numbers = Object.fromEntries(names.map((name) => [name, Number(values[name])])) as Record<Name, number>;
  for (const name of names) {
    if (!(Number.isInteger(numbers[name]) && numbers[name] >= 1))
      throw new RangeError(`--${name} takes a whole number from 1: ${values[name]}`);
  }
  const said = names.map((name) => `--${name} ${numbers[name]}`).join(" ");
  return { date, numbers, command: `npm run ${script} -- --date ${date} ${said}` };
}
