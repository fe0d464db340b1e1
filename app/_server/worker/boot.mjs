// Node can't read TypeScript by itself: the worker registers the loader, for both kinds of modules, and then becomes what it is for.
import { workerData } from "node:worker_threads";
import { register as registerRequire } from "tsx/cjs/api";
import { register as registerImport } from "tsx/esm/api";

registerRequire();
registerImport();
if (workerData === "files") await import("./read-file.ts");
else if (workerData?.kind === "import" || workerData?.kind === "undo") await import("./import-writer.ts");
else if (workerData?.kind === "rewrite") await import("./rewriter.ts");
else await import("./judge.ts");
