"use client";

import { memo, useId } from "react";
import type { Dimension, Picture } from "@/lib/present/pose-drawing";
import type { PoseView } from "@/lib/present/pose-view";
import styles from "./pose-picture.module.css";
import { Area, Line, Tube, written } from "./pose-shapes";
import { useReader } from "./preferences/reader";

/** Drawing width the text sizes of the style sheet are made for, mm. */
const USUAL_WIDTH_MM = 2200;

/**
 * The solved pose to scale, from the side and from above, its lengths and angles written on it.
 * The words and numbers come ready from `poseView`; the same sentences stand beside for who does
 * not see it, and on paper.
 */
export const PosePicture = memo(function PosePicture({
	view,
}: {
	view: PoseView;
}) {
	const { say } = useReader();
	return (
		<figure className={styles.pose}>
			{view.pictures.map((picture) => (
				<Drawing key={picture.id} picture={picture} />
			))}
			<figcaption className={styles.words}>
				<p>{view.summary}</p>
				<p className={styles.key}>
					<span>
						<Sample /> {say("part.pose.measured")}
					</span>
					<span>
						<Sample estimated /> {say("part.pose.estimated")}
					</span>
				</p>
			</figcaption>
			{view.shortfalls.length > 0 && (
				<ul className={styles.shortfalls}>
					{view.shortfalls.map((text) => (
						<li key={text}>{text}</li>
					))}
				</ul>
			)}
			<details className={styles.numbers}>
				<summary>{say("part.pose.numbers")}</summary>
				<dl>
					{view.numbers.map(({ label, value, origin }) => (
						<div key={label}>
							<dt>{label}</dt>
							<dd>
								{value} <span className={styles.origin}>{origin}</span>
							</dd>
						</div>
					))}
				</dl>
			</details>
		</figure>
	);
});

function Drawing({ picture }: { picture: Picture }) {
	const id = useId();
	const { x, y, width, height } = picture.box;
	return (
		<div className={styles.drawing}>
			<p className={styles.title}>{picture.title}</p>
			<svg
				role="img"
				aria-labelledby={id}
				viewBox={[x, y, width, height].map(written).join(" ")}
				style={
					{
						"--scale": written((10 * width) / USUAL_WIDTH_MM) / 10,
					} as React.CSSProperties
				}
			>
				<title id={id}>{picture.alternative}</title>
				{picture.shapes.map((shape) =>
					shape.widthMm === undefined ? (
						<Area key={shape.id} shape={shape} className={styles[shape.part]} />
					) : shape.widthMm === 0 ? (
						<Line
							key={shape.id}
							line={shape.points}
							className={styles[shape.part]}
						/>
					) : (
						<Tube key={shape.id} shape={shape} className={styles[shape.part]} />
					),
				)}
				{picture.labels.map((label) => (
					<g key={label.id}>
						{label.guides.map((line) => (
							<Line key={String(line)} line={line} className={styles.guide} />
						))}
						<text
							x={written(label.at[0])}
							y={written(label.at[1])}
							textAnchor={label.anchor}
						>
							<tspan className={styles.word}>{label.word} </tspan>
							{label.text}
						</text>
					</g>
				))}
				{picture.dimensions.map((dimension) => (
					<Measure key={dimension.id} dimension={dimension} />
				))}
			</svg>
		</div>
	);
}

function Measure({
	dimension: { from, to, extensions, text, textAt, anchor, measured },
}: {
	dimension: Dimension;
}) {
	const outside = { start: "0.5em", middle: 0, end: "-0.5em" } as const;
	return (
		<>
			{extensions.map((line) => (
				<Line key={String(line)} line={line} className={styles.extension} />
			))}
			<Line
				line={[from, to]}
				className={measured ? styles.measured : styles.estimated}
			/>
			<circle
				className={styles.end}
				cx={written(from[0])}
				cy={written(from[1])}
			/>
			<circle className={styles.end} cx={written(to[0])} cy={written(to[1])} />
			<text
				x={written(textAt[0])}
				y={written(textAt[1])}
				dx={outside[anchor]}
				dy={anchor === "middle" ? "-0.5em" : "0.35em"}
				textAnchor={anchor}
			>
				{text}
			</text>
		</>
	);
}

const Sample = ({ estimated = false }: { estimated?: boolean }) => (
	<svg className={styles.sample} viewBox="0 0 32 8" aria-hidden="true">
		<line
			x1="1"
			x2="31"
			y1="4"
			y2="4"
			className={estimated ? styles.sampleDashed : undefined}
		/>
	</svg>
);
