/** @type {import("next").NextConfig} */
export default {
	// Says nothing to visitors but what the server runs on.
	poweredByHeader: false,
	// The development server writes no instruction files into the project.
	agentRules: false,
	// A second build beside the usual one, where both must exist at once.
	distDir: process.env.NEXT_DIST_DIR || ".next",
	// What is built is checked; tests and their development-only packages are checked by npm run check.
	typescript: { tsconfigPath: "tsconfig.build.json" },
	// What every answer says to the browser; a policy for scripts needs a nonce and does not stand here.
	headers: async () => [
		{
			source: "/:path*",
			headers: [
				// A file is only what it is declared to be.
				{ key: "X-Content-Type-Options", value: "nosniff" },
				// No other site shows these pages inside its own, or takes over their addresses and forms.
				{
					key: "Content-Security-Policy",
					value:
						"frame-ancestors 'none'; base-uri 'self'; form-action 'self'; object-src 'none'",
				},
				// The numbers of fittings and specs stay out of other sites' logs.
				{ key: "Referrer-Policy", value: "same-origin" },
				// None of these is used.
				{
					key: "Permissions-Policy",
					value: "camera=(), microphone=(), geolocation=()",
				},
			],
		},
	],
};
