CREATE TABLE `reader_error_fit` (
	`academy_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`number` integer NOT NULL,
	`from_day` text NOT NULL,
	`reader_sd` real NOT NULL,
	`offset_sd` real,
	`pairs` integer NOT NULL,
	`shared` integer NOT NULL,
	`version` text NOT NULL,
	`fitted_at` text NOT NULL,
	PRIMARY KEY(`academy_id`, `fundamental_id`, `number`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `reread_draw` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`reader` text NOT NULL,
	`level` text NOT NULL,
	`same_as` text,
	`who` text NOT NULL,
	`day` text NOT NULL,
	`drawn_at` text NOT NULL,
	`finished_on` text,
	`finished_at` text,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `reread_draw_academy` ON `reread_draw` (`academy_id`,`drawn_at`);--> statement-breakpoint
CREATE TABLE `reread_item` (
	`draw_id` text NOT NULL,
	`place` integer NOT NULL,
	`student_id` text NOT NULL,
	`session_id` text NOT NULL,
	`swing_id` integer NOT NULL,
	`fundamental_id` text NOT NULL,
	`film_reference` text NOT NULL,
	`reading_id` integer,
	PRIMARY KEY(`draw_id`, `place`),
	FOREIGN KEY (`draw_id`) REFERENCES `reread_draw`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`session_id`) REFERENCES `session`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`swing_id`) REFERENCES `swing`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`reading_id`) REFERENCES `reading`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `reread_item_swing` ON `reread_item` (`swing_id`,`fundamental_id`);