"use client";

import { Button, LinkButton } from "./_ui/button";
import { Notice } from "./_ui/notice";
import { PageHead } from "./_ui/section";

export default function PageError({
	error,
	retry,
}: {
	error: Error & { digest?: string };
	retry: () => void;
}) {
	return (
		<>
			<PageHead
				title="This page could not be shown"
				lead="A draft that was saved is still there. Try again; if it happens twice, note what you did."
				actions={
					<>
						<Button look="main" onClick={retry}>
							Try again
						</Button>
						<LinkButton href="/fittings">Go to the fittings</LinkButton>
					</>
				}
			/>
			{error.digest !== undefined && (
				<Notice kind="error" title="For the person who looks after this">
					<p>Reference {error.digest}</p>
				</Notice>
			)}
		</>
	);
}
