import path from "node:path";

const root = path.resolve(__dirname, "..", "..");

/** Where the tests' own server answers, and where its data lie. */
export const served = {
  port: Number(process.env.PROOFBAND_TEST_PORT || 3219),
  get address() {
    return `http://127.0.0.1:${this.port}`;
  },
  data: path.join(root, ".tmp", "e2e-data"),
  /** The cookies of a browser in which the demo was entered. */
  signedIn: path.join(root, ".tmp", "signed-in.json"),
  root,
};
