import { readClock } from "@/app/_server/clock";
import { closeDatabases, dataFolder, findAcademyDatabase } from "@/app/_server/database";
import { ownOrigins, wrongOrigin } from "@/app/_server/door/origin";
import { findHolder } from "@/app/_server/door/server-lock";
import { cleanEmail } from "@/app/_server/people/name-rules";
import { LINK_DAYS, makeLink } from "@/app/_server/people/one-time-link";
import { inTransaction } from "@/db/client";
import { readPeople } from "@/db/read/people";
import { deleteLogIns, deleteSecondStep } from "@/db/write/accounts";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

interface AccountArguments {
  readonly email: string;
  readonly secondStep: "keep" | "drop";
}

/** Arguments, or the word that is not understood. */
function readArguments(argv: readonly string[]): AccountArguments | string {
  let email = "";
  let secondStep: AccountArguments["secondStep"] = "keep";
  for (let at = 0; at < argv.length; at++) {
    if (argv[at] === "--email" && argv[at + 1] !== undefined) email = cleanEmail(argv[++at]);
    else if (argv[at] === "--drop-second-step") secondStep = "drop";
    else return argv[at] ?? "";
  }
  return email === "" ? "--email" : { email, secondStep };
}

function refuse(key: string, args = {}): number {
  console.error(words.say(`account-command.${key}`, args));
  return 2;
}

/** Where the server of this data folder answers, or would. */
function address(): string {
  const port = findHolder(dataFolder())?.port ?? process.env.PORT ?? "3000";
  return ownOrigins(String(port), process.env.PROOFBAND_ORIGIN || undefined)[0] ?? "";
}

// Whoever runs this has the data folder anyway: no more is asked of them.
async function main(argv: readonly string[]): Promise<number> {
  const args = readArguments(argv);
  if (typeof args === "string") return refuse("usage", { word: args });
  const stated = wrongOrigin();
  if (stated !== null) {
    console.error(words.say("prepare.origin", { stated }));
    return 2;
  }
  const found = await findAcademyDatabase("own");
  if (!found) return refuse("no-academy");
  const { db, academyId } = found;
  const person = readPeople(db, academyId).find((each) => each.email === args.email);
  if (!person || person.endedAt !== null) return refuse("nobody", { email: args.email });
  const { userId, name, email } = person;
  const made = inTransaction(db, () => {
    deleteLogIns(db, userId);
    if (args.secondStep === "drop") deleteSecondStep(db, userId, readClock());
    return makeLink(db, academyId, words.say("account-command.who"), { kind: "password", name, email, userId });
  });
  console.log(words.say("account-command.made", { name, days: LINK_DAYS }));
  if (args.secondStep === "drop") console.log(words.say("account-command.dropped"));
  console.log(`\n${address()}${made.path}`);
  return 0;
}

main(process.argv.slice(2)).then((status) => {
  closeDatabases();
  process.exitCode = status;
});
