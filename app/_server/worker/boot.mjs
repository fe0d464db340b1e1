// Node can't read TypeScript by itself: the worker registers the loader first and then becomes the judge.
import { register } from "tsx/esm/api";

register();
await import("./judge.ts");
