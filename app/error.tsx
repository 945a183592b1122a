"use client";

import { Button, LinkButton } from "./_ui/button";
import { Notice } from "./_ui/notice";
import { useReader } from "./_ui/preferences/reader";
import { PageHead } from "./_ui/section";

export default function PageError({
	error,
	retry,
}: {
	error: Error & { digest?: string };
	retry: () => void;
}) {
	const { say } = useReader();
	return (
		<>
			<PageHead
				title={say("problem.pageFailed")}
				lead={say("problem.draftKeptTryAgain")}
				actions={
					<>
						<Button look="main" onClick={retry}>
							{say("problem.tryAgain")}
						</Button>
						<LinkButton href="/fittings">
							{say("problem.toFittings")}
						</LinkButton>
					</>
				}
			/>
			{error.digest !== undefined && (
				<Notice kind="error" title={say("problem.forKeeper")}>
					<p>{say("problem.reference", { digest: error.digest })}</p>
				</Notice>
			)}
		</>
	);
}
