CREATE TABLE `fair_allocation` (
	`id` text PRIMARY KEY NOT NULL,
	`test_id` text NOT NULL,
	`student_id` text NOT NULL,
	`club_group` text NOT NULL,
	`coach_id` text NOT NULL,
	`place` integer NOT NULL,
	`arm` integer NOT NULL,
	`day` text NOT NULL,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`test_id`) REFERENCES `fair_test`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `fair_allocation_test` ON `fair_allocation` (`test_id`,`coach_id`,`place`);--> statement-breakpoint
CREATE TABLE `fair_step` (
	`test_id` text NOT NULL,
	`number` integer NOT NULL,
	`kind` text NOT NULL,
	`figures` text,
	`why` text NOT NULL,
	`day` text NOT NULL,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	PRIMARY KEY(`test_id`, `number`),
	FOREIGN KEY (`test_id`) REFERENCES `fair_test`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `fair_test` (
	`id` text PRIMARY KEY NOT NULL,
	`academy_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`first_drill_id` text NOT NULL,
	`second_drill_id` text NOT NULL,
	`least` real NOT NULL,
	`spread` real NOT NULL,
	`students` integer NOT NULL,
	`looks` integer NOT NULL,
	`days` integer NOT NULL,
	`seed` text NOT NULL,
	`day` text NOT NULL,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `fair_value` (
	`allocation_id` text PRIMARY KEY NOT NULL,
	`look` integer NOT NULL,
	`value` real NOT NULL,
	FOREIGN KEY (`allocation_id`) REFERENCES `fair_allocation`(`id`) ON UPDATE no action ON DELETE cascade
);
