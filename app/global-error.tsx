"use client";

import "./globals.css";
import german from "@/lib/words/de/problem.json";
import germanShell from "@/lib/words/de/shell.json";
import english from "@/lib/words/en/problem.json";
import englishShell from "@/lib/words/en/shell.json";
import type { LanguageId } from "@/lib/words/languages";

/** Whose page it was is not known here: it is said in every language. */
const WORDS = {
	en: { ...english, name: englishShell.name },
	de: { ...german, name: germanShell.name },
} satisfies Record<LanguageId, object>;

/** Stands in for the layout itself, so it brings its own html and body. */
export default function GlobalError({
	error,
	retry,
}: {
	error: Error & { digest?: string };
	retry: () => void;
}) {
	return (
		<html lang="en">
			<body>
				<main style={{ padding: "2rem", maxInlineSize: "42rem" }}>
					<title>{WORDS.en.name}</title>
					{Object.entries(WORDS).map(([language, words], place) => (
						<section
							key={language}
							lang={language}
							style={{ marginBlockEnd: "2rem" }}
						>
							{place === 0 ? <h1>{words.failed}</h1> : <h2>{words.failed}</h2>}
							<p>{words.draftKept}</p>
							<button
								type="button"
								onClick={retry}
								style={{ minBlockSize: "3rem", paddingInline: "1.5rem" }}
							>
								{words.tryAgain}
							</button>
						</section>
					))}
					{error.digest !== undefined && <p>{error.digest}</p>}
				</main>
			</body>
		</html>
	);
}
