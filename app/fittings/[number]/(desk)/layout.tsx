import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { KeepWorkshop } from "@/app/coaching/_parts/use-workshop";
import { answersSchema } from "@/lib/forms/answers";
import { getFitting, getFittingById } from "@/lib/records/fittings/loaders";
import { currentSettings, today } from "@/lib/records/settings/loaders";
import { offerOf } from "@/lib/workshop/settings";
import { FittingDesk } from "../../_parts/desk";
import { FittingHead } from "../../_parts/fitting-head";
import { OldAnswersProvider } from "../../_parts/old-answers";
import { NumberedWay } from "../../_parts/way";

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
	const madeAt = new Date().toISOString();
	const workshop = { offer: offerOf(await currentSettings()), asOf: madeAt };
	const earlier =
		fitting.basedOn === null ? null : await getFittingById(fitting.basedOn.id);
	const { player, answers, spec, ...rest } = fitting;
	return (
		<FittingDesk
			key={fitting.id}
			fitting={{
				id: rest.id,
				number: rest.number,
				player,
				isDemo: rest.isDemo,
				answers: answersSchema.parse(answers),
				revision: rest.revision,
				takenWishes: [...rest.takenWishes],
				specNumber: spec?.number ?? null,
				conflicts: [],
				start: null,
				asOf: madeAt,
				openedAt: madeAt,
			}}
			workshop={workshop.offer}
		>
			<OldAnswersProvider
				old={
					earlier && {
						number: earlier.number,
						day: today(earlier.createdAt),
						answers: answersSchema.parse(earlier.answers),
					}
				}
			>
				<NumberedWay fittingNumber={rest.number}>
					<KeepWorkshop told={workshop} />
					<FittingHead />
					{children}
				</NumberedWay>
			</OldAnswersProvider>
		</FittingDesk>
	);
}
