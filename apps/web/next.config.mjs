/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  devIndicators: false,
  reactStrictMode: true,
  // Pages are shells that fetch from the API in the browser; whoever serves their scripts zips them here.
  compress: true,
  // Types are checked by `tsc --noEmit -p apps/web`, once, not again in every build.
  typescript: { ignoreBuildErrors: true },
  // 3.7 kB zipped of Today's script: zod's own functions that no schema of ours reaches.
  turbopack: { rules: { '**/zod/v4/mini/schemas.js': { loaders: ['./zod-unreached.cjs'] } } },
  experimental: {
    // A page asked for without a network is waited for; the browser's own error page would take this one away.
    useOffline: true,
    optimizePackageImports: ['@mantine/core', '@mantine/hooks', '@fryward/words'],
  },
}

export default config
