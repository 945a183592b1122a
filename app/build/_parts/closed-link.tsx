import "server-only";
import { LinkButton } from "@/app/_ui/button";
import { readReader } from "@/app/_ui/preferences/loaders";
import { PageHead } from "@/app/_ui/section";

/** An address that opens nothing (any more). */
export async function ClosedLink({
	standing,
}: {
	standing: "expired" | "revoked" | "unknown";
}) {
	const { say } = await readReader();
	return (
		<PageHead
			title={say(`online.closed.${standing}`)}
			lead={say("online.closed.about")}
			actions={
				<LinkButton look="main" href="/build">
					{say("online.closed.build")}
				</LinkButton>
			}
		/>
	);
}
