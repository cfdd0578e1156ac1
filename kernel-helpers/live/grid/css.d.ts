// A style sheet is bundled into a file of its own beside the script.
declare module "*.css";
