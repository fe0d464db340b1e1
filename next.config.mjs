/** @type {import("next").NextConfig} */
const config = {
  poweredByHeader: false,
  reactStrictMode: true,
  serverExternalPackages: ["better-sqlite3"],
  turbopack: { root: import.meta.dirname },
  // Types are checked whole, tests included, by a command of their own.
  typescript: { ignoreBuildErrors: true },
  images: { unoptimized: true },
  experimental: {
    serverActions: { bodySizeLimit: "2mb" },
    // What passes the outermost door is kept whole up to here; left to itself the framework cuts a body off at 10 MB without
    // a word. A file may have 32 MB, and what is over that must arrive far enough to be seen to be.
    proxyClientMaxBodySize: "34mb",
  },
};

export default config;
