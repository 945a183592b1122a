import { NATURAL_PALETTE } from "@/lib/present/cue-palette";
import { renderCue } from "@/lib/present/cue-raster";

export type RasterAsked = Omit<Parameters<typeof renderCue>[0], "palette">;

export interface RasterQuestion {
	readonly key: number;
	readonly asked: RasterAsked;
}

/** `rgba` is null where it could not be drawn; the page then meets the error itself. */
export interface RasterAnswer {
	readonly key: number;
	readonly rgba: Uint8ClampedArray<ArrayBuffer> | null;
}

const scope = globalThis as unknown as {
	onmessage: (event: MessageEvent<RasterQuestion>) => void;
	postMessage(message: RasterAnswer, transfer?: Transferable[]): void;
};

scope.onmessage = ({ data: { key, asked } }) => {
	try {
		const { rgba } = renderCue({ ...asked, palette: NATURAL_PALETTE });
		scope.postMessage({ key, rgba }, [rgba.buffer]);
	} catch {
		scope.postMessage({ key, rgba: null });
	}
};
