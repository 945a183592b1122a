import "@fontsource-variable/atkinson-hyperlegible-next/index.css";
import "./globals.css";
import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import { readPreferences } from "./_ui/preferences/loaders";
import { ReaderProvider } from "./_ui/preferences/reader";
import { Shell } from "./_ui/shell/shell";

export const metadata: Metadata = {
	title: {
		default: "Cue fitting advisor",
		template: "%s · Cue fitting advisor",
	},
	description:
		"From a player’s body, hand and game to a wooden cue that can be built.",
};

export const viewport: Viewport = {
	themeColor: [
		{ media: "(prefers-color-scheme: light)", color: "#eceeea" },
		{ media: "(prefers-color-scheme: dark)", color: "#151311" },
	],
};

export default async function RootLayout({
	children,
}: {
	children: ReactNode;
}) {
	const preferences = await readPreferences();
	return (
		<html
			lang={preferences.language}
			data-theme={preferences.theme ?? undefined}
		>
			<body>
				<ReaderProvider
					manner={{
						system: preferences.system,
						language: preferences.language,
					}}
				>
					<Shell preferences={preferences}>{children}</Shell>
				</ReaderProvider>
			</body>
		</html>
	);
}
