import { afterEach, expect, it, vi } from "vitest";
import { openOrLeave } from "@/app/_server/door/open-or-leave";

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllEnvs();
});

it.each(["films.example", "films.example:443", "//films.example", "ftp://films.example", "https://a:b@films.example"])(
  "a public address stated as %s is said to be none before anything is opened, and nothing is served",
  async (stated) => {
    vi.stubEnv("PROOFBAND_ORIGIN", stated);
    vi.stubEnv("PROOFBAND_DATA", "/nowhere/that/could/be/opened");
    const said = vi.spyOn(process.stderr, "write").mockReturnValue(true);
    const left = vi.spyOn(process, "exit").mockImplementation((status) => {
      throw new Error(`left with ${status}`);
    });
    await expect(openOrLeave()).rejects.toThrow("left with 1");
    expect(left).toHaveBeenCalledTimes(1);
    expect(said.mock.calls.join("")).toContain(`PROOFBAND_ORIGIN is not an address that people can open: ${stated}.`);
  },
);
