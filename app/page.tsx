import { LinkButton } from "./_ui/button";
import { PageHead } from "./_ui/section";

export default function Home() {
	return (
		<PageHead
			title="A cue that fits, and that can be built"
			lead="From a player’s body, hand, stance and game to the length, weight, butt and tip of a wooden cue, with the reason and the spread of each number, and the sheet the bench works from."
			actions={
				<LinkButton look="main" href="/fittings/new" wide>
					Start a fitting
				</LinkButton>
			}
		/>
	);
}
