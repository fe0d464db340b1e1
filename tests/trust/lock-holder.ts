import { takeLock } from "@/app/_server/door/server-lock";

const [, , folder = "", port] = process.argv;
const lock = takeLock(folder, Number(port));
process.stdout.write(
  `${JSON.stringify(lock.kind === "held" ? { kind: "held", holder: lock.holder } : { kind: "taken" })}\n`,
);
if (lock.kind === "taken") setInterval(() => {}, 1000);
