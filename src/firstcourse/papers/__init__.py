"""The papers of a plan: what a setter prints, opens or hands on, each made from the plan alone."""
