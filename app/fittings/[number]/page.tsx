import { redirect } from "next/navigation";

/** A fitting opens at its first step. */
export default async function FittingPage({
	params,
}: {
	params: Promise<{ number: string }>;
}) {
	const { number } = await params;
	redirect(`/fittings/${encodeURIComponent(number)}/player`);
}
