CREATE TABLE `drill_decision` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`assignment_id` text NOT NULL,
	`decision` text NOT NULL,
	`why` text NOT NULL,
	`remeasure_was` text,
	`day` text NOT NULL,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`assignment_id`) REFERENCES `drill_assignment`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `drill_decision_assignment` ON `drill_decision` (`assignment_id`,`id`);--> statement-breakpoint
CREATE TABLE `film_plan` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`club_group` text NOT NULL,
	`made_on` text NOT NULL,
	`due_on` text NOT NULL,
	`body` text NOT NULL,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	`reminded_at` text,
	`voided_at` text,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `film_plan_student` ON `film_plan` (`student_id`,`due_on`);--> statement-breakpoint
CREATE TABLE `owning_rule` (
	`academy_id` text NOT NULL,
	`number` integer NOT NULL,
	`from_day` text NOT NULL,
	`sessions` integer NOT NULL,
	`span_days` integer NOT NULL,
	`rest_days` integer NOT NULL,
	`share` real NOT NULL,
	`share_low` real NOT NULL,
	`who` text NOT NULL,
	`why` text NOT NULL,
	`recorded_at` text NOT NULL,
	PRIMARY KEY(`academy_id`, `number`),
	FOREIGN KEY (`academy_id`) REFERENCES `academy`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `priority_choice` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`student_id` text NOT NULL,
	`club_group` text NOT NULL,
	`fundamental_id` text,
	`reason` text NOT NULL,
	`day` text NOT NULL,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `priority_choice_student` ON `priority_choice` (`student_id`,`club_group`,`id`);--> statement-breakpoint
ALTER TABLE `drill` ADD `dose` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `drill` ADD `reps` integer;--> statement-breakpoint
ALTER TABLE `drill` ADD `days_a_week` integer;--> statement-breakpoint
ALTER TABLE `drill` ADD `remeasure_days` integer;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `reps` integer;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `days_a_week` integer;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `stop_rule` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `remeasure_on` text;--> statement-breakpoint
ALTER TABLE `goal_band` ADD `who` text DEFAULT '' NOT NULL;