import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { answersSchema } from "@/lib/forms/answers";
import { getFitting } from "@/lib/records/fittings/loaders";
import { currentSettings } from "@/lib/records/settings/loaders";
import { offerOf } from "@/lib/workshop/settings";
import { FittingDesk } from "../_parts/desk";
import { FittingHead } from "../_parts/fitting-head";

export default async function FittingLayout({
	params,
	children,
}: {
	params: Promise<{ number: string }>;
	children: ReactNode;
}) {
	const { number } = await params;
	const fitting = /^[1-9]\d{0,8}$/.test(number)
		? await getFitting(Number(number))
		: null;
	if (fitting === null) notFound();
	const settings = await currentSettings();
	const { id, player, isDemo, answers, revision, takenWishes, spec } = fitting;
	return (
		<FittingDesk
			key={id}
			fitting={{
				id,
				number: fitting.number,
				playerName: player.name,
				isDemo,
				answers: answersSchema.parse(answers),
				revision,
				takenWishes,
				specNumber: spec?.number ?? null,
			}}
			workshop={offerOf(settings)}
		>
			<FittingHead />
			{children}
		</FittingDesk>
	);
}
