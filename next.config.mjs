/** @type {import("next").NextConfig} */
const config = {
  poweredByHeader: false,
  reactStrictMode: true,
  serverExternalPackages: ["better-sqlite3"],
  turbopack: { root: import.meta.dirname },
  // Types are checked whole, tests included, by a command of their own.
  typescript: { ignoreBuildErrors: true },
  images: { unoptimized: true },
  experimental: { serverActions: { bodySizeLimit: "2mb" } },
};

export default config;
