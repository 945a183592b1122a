import {
	appIconPng,
	ICON_NAMES,
	ICONS,
	type IconName,
} from "@/lib/documents/app-icon";

/** Drawn once, with the build. */
export const dynamic = "force-static";
export const dynamicParams = false;
export const generateStaticParams = () => ICON_NAMES.map((name) => ({ name }));

const isIcon = (name: string): name is IconName => Object.hasOwn(ICONS, name);

/** The app's icons for home screens. */
export async function GET(
	_request: Request,
	{ params }: { params: Promise<{ name: string }> },
): Promise<Response> {
	const { name } = await params;
	if (!isIcon(name)) return new Response(null, { status: 404 });
	return new Response(new Uint8Array(appIconPng(ICONS[name])), {
		headers: {
			"content-type": "image/png",
			"cache-control": "public, max-age=86400",
		},
	});
}
