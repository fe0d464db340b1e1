// Node can't read TypeScript by itself: the worker registers the loader, for both kinds of modules, and then becomes the judge.
import { register as registerRequire } from "tsx/cjs/api";
import { register as registerImport } from "tsx/esm/api";

registerRequire();
registerImport();
await import("./judge.ts");
