import "server-only";
import { Notice } from "@/app/_ui/notice";
import { readReader } from "@/app/_ui/preferences/loaders";

/** Said where the browser runs no script: what the page would do, and whom to ask instead. */
export async function NoScript({ contact }: { contact: string }) {
	const { say } = await readReader();
	return (
		<noscript>
			<Notice kind="caution" title={say("online.noScript.title")}>
				<p>
					{say("online.noScript.text", {
						has: contact === "" ? "none" : "some",
						contact,
					})}
				</p>
			</Notice>
		</noscript>
	);
}
