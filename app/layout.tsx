import "./globals.css";
import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import { OfflineBar } from "./_device/offline-bar";
import { FACE } from "./_ui/face";
import { readPreferences, readReader } from "./_ui/preferences/loaders";
import { ReaderProvider } from "./_ui/preferences/reader";
import { Shell } from "./_ui/shell/shell";
import { buildId } from "./worker.js/build";

export async function generateMetadata(): Promise<Metadata> {
	const { say } = await readReader();
	return {
		title: { default: say("shell.name"), template: say("shell.title") },
		description: say("shell.description"),
	};
}

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
	const { system, language, theme } = await readPreferences();
	const build = buildId();
	return (
		<html
			lang={language}
			className={FACE}
			data-theme={theme ?? undefined}
			data-build={build ?? undefined}
		>
			<body>
				<ReaderProvider manner={{ system, language }}>
					<OfflineBar
						build={build}
						manner={`${system} ${language} ${theme ?? "device"}`}
					/>
					<Shell reader={await readReader()} theme={theme}>
						{children}
					</Shell>
				</ReaderProvider>
			</body>
		</html>
	);
}
