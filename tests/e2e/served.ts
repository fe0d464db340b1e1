import path from "node:path";

const FIRST_PORT = Number(process.env.PROOFBAND_TEST_PORT || 3219);
const root = path.resolve(__dirname, "..", "..");

/** How many files of tests run at once; each has a server and data of its own, so that none sees what another changes. */
export const WORKERS = 2;

function servedAt(place: number) {
  const port = FIRST_PORT + place;
  return {
    port,
    address: `http://127.0.0.1:${port}`,
    data: path.join(root, ".tmp", "e2e-data", `${place}`),
    /** The cookies of a browser in which the demo was entered. */
    signedIn: path.join(root, ".tmp", `signed-in-${place}.json`),
    root,
  };
}

/** Where the server of this worker answers, and where its data lie. */
export const served = servedAt(Number(process.env.TEST_PARALLEL_INDEX || 0));

/** Where an own academy is begun: from then on a browser without a wish is shown it and no more the demo. */
export const servedForOwn = servedAt(WORKERS);

/** Another one, for an academy of many people. */
export const servedForPeople = servedAt(WORKERS + 1);

/** Every server that the tests need, in the order of their places. */
export const allServed = Array.from({ length: WORKERS + 2 }, (_, place) => servedAt(place));

/** The demo as it was filled and judged, before any test. */
export const MADE_DEMO = path.join(root, ".tmp", "e2e-data", "made");

/** All that the servers of a run have written out. */
export const SERVED_LOG = path.join(root, ".tmp", "served.log");

/** What the server of a family's academy wrote out, and what is on file there that no line may hold. */
export const FAMILY_LOG = path.join(root, ".tmp", "served-family.log");
export const FAMILY_WORDS = path.join(root, ".tmp", "served-family.json");
