import { LinkButton } from "./_ui/button";
import { PageHead } from "./_ui/section";

export default function NotFound() {
	return (
		<PageHead
			title="There is no such page"
			lead="The address may be mistyped, or what stood here was removed. Nothing that you entered is lost."
			actions={
				<LinkButton look="main" href="/fittings">
					Go to the fittings
				</LinkButton>
			}
		/>
	);
}
