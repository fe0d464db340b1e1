import { openAcademyDatabase, openForServing } from "@/app/_server/database";

// A server that holds the data folder, and is in the middle of writing for a while whenever it is asked to.

const [, , holdFor = "0"] = process.argv;

async function main(): Promise<void> {
  if ((await openForServing(3999)) !== null) throw new Error("another server has the folder");
  const db = await openAcademyDatabase("own");
  process.on("SIGUSR2", () => {
    db.sqlite.exec("BEGIN IMMEDIATE; UPDATE student SET revision = revision");
    process.stdout.write("writing\n");
    setTimeout(() => {
      db.sqlite.exec("COMMIT");
      process.stdout.write("written\n");
    }, Number(holdFor));
  });
  setInterval(() => {}, 1000);
  // Said last: whoever hears it may send the signal at once.
  process.stdout.write("serving\n");
}

void main();
