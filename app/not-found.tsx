import { LinkButton } from "./_ui/button";
import { readReader } from "./_ui/preferences/loaders";
import { PageHead } from "./_ui/section";

export default async function NotFound() {
	const { say } = await readReader();
	return (
		<PageHead
			title={say("problem.noSuchPage")}
			lead={say("problem.noSuchPageAbout")}
			actions={
				<LinkButton look="main" href="/fittings">
					{say("problem.toFittings")}
				</LinkButton>
			}
		/>
	);
}
