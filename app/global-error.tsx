"use client";

import "./globals.css";

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
					<title>Cue fitting advisor</title>
					<h1>The advisor could not start this page</h1>
					<p>A draft that was saved is still there.</p>
					{error.digest !== undefined && <p>Reference {error.digest}</p>}
					<button
						type="button"
						onClick={retry}
						style={{ minBlockSize: "3rem", paddingInline: "1.5rem" }}
					>
						Try again
					</button>
				</main>
			</body>
		</html>
	);
}
